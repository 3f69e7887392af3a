package org.girandole.timecode.wav;

import java.io.IOException;
import java.math.BigInteger;
import java.util.Arrays;

/**
 * The same audio at another sample rate. Output sample {@code k} is the input at time {@code k * from / to}, kept as a fraction of whole
 * numbers, so that music and timecode do not drift apart over an evening; the filter is symmetric, so that nothing is delayed.
 *
 * <p>Each output sample is the convolution of the input with a sinc whose window is Kaiser's (J. F. Kaiser, 1974), beta 10 and 48 zero crossings
 * to a side. The band below 0.45 of the lower sample rate passes within 0.01 dB; what would fold back is about 100 dB down.
 */
public final class ResampledSource implements SampleSource {
	private static final int CROSSINGS = 48;
	private static final double KAISER_BETA = 10;
	/** The cut lies half a transition below half the lower sample rate: (100 - 7.95) / (14.36 * 96) / 2 of that rate. */
	private static final double CUT = 1 - 2 * 0.0334;
	private static final int MOST_COEFFICIENTS = 8_000_000;
	private static final int BLOCK_FRAMES = 8192;

	private final SampleSource source;
	private final int channels;
	private final int sampleRate;
	private final int up;
	private final int down;
	private final int side;
	private final float[][] phases;
	private final float[][] window;
	private final float[] incoming;
	private int held;
	private int centre;
	private int phase;
	private boolean ended;

	private ResampledSource(SampleSource source, int sampleRate) {
		this.source = source;
		this.sampleRate = sampleRate;
		this.channels = source.channels();
		int common = BigInteger.valueOf(sampleRate).gcd(BigInteger.valueOf(source.sampleRate())).intValue();
		this.up = sampleRate / common;
		this.down = source.sampleRate() / common;
		// Even, so that a row of coefficients has a multiple of four.
		this.side = 2 * (int) Math.ceil(CROSSINGS / 2 * Math.max(1.0, (double) down / up));
		if ((long) up * side * 2 > MOST_COEFFICIENTS) {
			throw new IllegalArgumentException("Audio at " + source.sampleRate() + " Hz cannot be brought to " + sampleRate
					+ " Hz: the two have no common measure; convert it to 44100, 48000 or 96000 Hz first");
		}
		this.phases = kernel();
		this.window = new float[channels][Math.max(BLOCK_FRAMES, side) + 2 * side];
		this.incoming = new float[BLOCK_FRAMES * channels];
		this.held = side;
		this.centre = side;
	}

	/** The audio at this sample rate; itself if it has that already. */
	public static SampleSource of(SampleSource source, int sampleRate) {
		return source.sampleRate() == sampleRate ? source : new ResampledSource(source, sampleRate);
	}

	@Override
	public int sampleRate() {
		return sampleRate;
	}

	@Override
	public int channels() {
		return channels;
	}

	@Override
	public long frames() {
		return source.frames() < 0 ? -1 : (source.frames() * up + down - 1) / down;
	}

	@Override
	public int read(float[] interleaved, int offset, int count) throws IOException {
		int done = 0;
		while (done < count && available()) {
			for (int channel = 0; channel < channels; channel++) {
				interleaved[offset + done * channels + channel] = sample(window[channel]);
			}
			done++;
			phase += down;
			centre += phase / up;
			phase %= up;
		}
		return done == 0 && count > 0 ? -1 : done;
	}

	private float sample(float[] from) {
		float[] coefficients = phases[phase];
		int first = centre - side + 1;
		// Four sums that do not wait for one another are half as fast again as one.
		float a = 0;
		float b = 0;
		float c = 0;
		float d = 0;
		for (int i = 0; i < coefficients.length; i += 4) {
			a += from[first + i] * coefficients[i];
			b += from[first + i + 1] * coefficients[i + 1];
			c += from[first + i + 2] * coefficients[i + 2];
			d += from[first + i + 3] * coefficients[i + 3];
		}
		return a + b + (c + d);
	}

	/** Brings in input until the next output sample can be made; false when the input has ended before it. */
	private boolean available() throws IOException {
		while (centre + side >= held) {
			if (ended) {
				return false;
			}
			int got = source.read(incoming, 0, BLOCK_FRAMES);
			ended = got < 0;
			// Silence behind the end, so that the last samples have neighbours.
			makeRoom();
			for (int channel = 0; channel < channels; channel++) {
				float[] to = window[channel];
				for (int i = 0; i < got; i++) {
					to[held + i] = incoming[i * channels + channel];
				}
				Arrays.fill(to, held + Math.max(0, got), to.length, 0);
			}
			held += ended ? side : got;
		}
		return true;
	}

	/** Forgets the input that lies before the reach of the next output sample. */
	private void makeRoom() {
		int drop = Math.min(centre - side, held);
		for (float[] samples : window) {
			System.arraycopy(samples, drop, samples, 0, held - drop);
		}
		held -= drop;
		centre -= drop;
	}

	@Override
	public void close() throws IOException {
		source.close();
	}

	/** One row of coefficients for each place that an output sample can have between two input samples; each row passes a constant unchanged. */
	private float[][] kernel() {
		double scale = CUT * Math.min(1.0, (double) up / down);
		float[][] rows = new float[up][2 * side];
		for (int row = 0; row < up; row++) {
			double[] values = new double[2 * side];
			double sum = 0;
			for (int i = 0; i < values.length; i++) {
				double distance = i - side + 1 - (double) row / up;
				values[i] = sinc(distance * scale) * kaiser(distance / side);
				sum += values[i];
			}
			for (int i = 0; i < values.length; i++) {
				rows[row][i] = (float) (values[i] / sum);
			}
		}
		return rows;
	}

	private static double sinc(double x) {
		return Math.abs(x) < 1e-12 ? 1 : Math.sin(Math.PI * x) / (Math.PI * x);
	}

	private static double kaiser(double x) {
		return Math.abs(x) >= 1 ? 0 : bessel(KAISER_BETA * Math.sqrt(1 - x * x)) / bessel(KAISER_BETA);
	}

	/** The modified Bessel function of the first kind and order 0, by its power series. */
	private static double bessel(double x) {
		double term = 1;
		double sum = 1;
		for (int k = 1; term > 1e-17 * sum; k++) {
			term *= x / (2 * k) * (x / (2 * k));
			sum += term;
		}
		return sum;
	}
}
