package org.girandole.timecode.reader;

import java.util.Arrays;
import java.util.Random;
import java.util.function.DoubleUnaryOperator;

import org.girandole.timecode.FrameRate;
import org.girandole.timecode.Timecode;
import org.girandole.timecode.ltc.LtcSignal;
import org.girandole.timecode.ltc.LtcWord;
import org.girandole.timecode.ltc.ReleaseMark;
import org.girandole.timecode.ltc.UserBits;

/** A timecode line as samples, and what may befall it on its way. Everything is seeded. */
final class Line {
	static final ReleaseMark MARK = new ReleaseMark(3, "deadbeef");

	private Line() {
	}

	static float[] clean(FrameRate rate, int sampleRate, String start, int frames) {
		Timecode first = Timecode.parse(start, rate);
		LtcSignal signal = new LtcSignal(rate, sampleRate, -6, frame -> {
			Timecode label = first.plusFrames(frame);
			return LtcWord.of(label, UserBits.of(MARK, label.frames()));
		}, frames);
		float[] samples = new float[(int) LtcSignal.samples(rate, sampleRate, frames)];
		int at = 0;
		int got;
		while ((got = signal.read(samples, at, samples.length - at)) > 0) {
			at += got;
		}
		return samples;
	}

	/** White noise so many decibels below the signal's power, over the whole band of the recording. */
	static float[] whiteNoise(float[] samples, double snrDb, long seed) {
		double deviation = Math.sqrt(power(samples) / Math.pow(10, snrDb / 10));
		Random random = new Random(seed);
		float[] noisy = new float[samples.length];
		for (int i = 0; i < samples.length; i++) {
			noisy[i] = (float) (samples[i] + deviation * random.nextGaussian());
		}
		return noisy;
	}

	/** Noise whose power falls with frequency, by P. Kellet's filter (published on the music-dsp list; value from memory). */
	static float[] pinkNoise(float[] samples, double snrDb, long seed) {
		Random random = new Random(seed);
		float[] noise = new float[samples.length];
		double a = 0;
		double b = 0;
		double c = 0;
		for (int i = 0; i < noise.length; i++) {
			double white = random.nextGaussian();
			a = 0.99765 * a + white * 0.0990460;
			b = 0.96300 * b + white * 0.2965164;
			c = 0.57000 * c + white * 1.0526913;
			noise[i] = (float) (a + b + c + white * 0.1848);
		}
		double scale = Math.sqrt(power(samples) / power(noise) / Math.pow(10, snrDb / 10));
		for (int i = 0; i < noise.length; i++) {
			noise[i] = (float) (samples[i] + scale * noise[i]);
		}
		return noise;
	}

	static double power(float[] samples) {
		double sum = 0;
		for (float sample : samples) {
			sum += sample * (double) sample;
		}
		return sum / samples.length;
	}

	interface PerSample {
		double of(int index, float sample);
	}

	static float[] each(float[] samples, PerSample function) {
		float[] changed = new float[samples.length];
		for (int i = 0; i < samples.length; i++) {
			changed[i] = (float) function.of(i, samples[i]);
		}
		return changed;
	}

	static float[] backwards(float[] samples) {
		return each(samples, (i, sample) -> samples[samples.length - 1 - i]);
	}

	/** Plays with a speed that changes with time, by straight lines between samples. */
	static float[] atSpeed(float[] samples, int sampleRate, DoubleUnaryOperator speedAtSecond) {
		float[] played = new float[samples.length * 3];
		int count = 0;
		for (double at = 0; at < samples.length - 1; at += speedAtSecond.applyAsDouble(count++ / (double) sampleRate)) {
			int whole = (int) at;
			played[count] = (float) (samples[whole] + (at - whole) * (samples[whole + 1] - samples[whole]));
		}
		return Arrays.copyOf(played, count);
	}

	/** Poles of the simplest low-pass filter, one behind another. */
	static float[] lowPass(float[] samples, int sampleRate, double hertz, int poles) {
		float[] filtered = samples.clone();
		double part = 1 - Math.exp(-2 * Math.PI * hertz / sampleRate);
		for (int pole = 0; pole < poles; pole++) {
			double state = 0;
			for (int i = 0; i < filtered.length; i++) {
				state += part * (filtered[i] - state);
				filtered[i] = (float) state;
			}
		}
		return filtered;
	}

	static float[] highPass(float[] samples, int sampleRate, double hertz, int poles) {
		float[] filtered = samples;
		for (int pole = 0; pole < poles; pole++) {
			float[] low = lowPass(filtered, sampleRate, hertz, 1);
			filtered = each(filtered, (i, sample) -> sample - low[i]);
		}
		return filtered;
	}
}
