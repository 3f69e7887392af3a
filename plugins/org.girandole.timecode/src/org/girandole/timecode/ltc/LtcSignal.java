package org.girandole.timecode.ltc;

import java.util.function.LongFunction;

import org.girandole.timecode.FrameRate;
import org.girandole.timecode.TimecodeException;

/**
 * The audio signal of linear timecode, produced piece by piece. Bi-phase mark: every bit begins with a transition, and a one has another in
 * its middle. The transition that opens a word lies exactly where its frame begins; positions are fractions of a sample kept as whole
 * numbers, so that an hour of signal is as exact as its first frame.
 *
 * <p>A transition is half a cosine wave that rises from 10 % to 90 % in 40 us (SMPTE ST 12-1: 40 us +- 10 us). After the last word the signal
 * makes the transition that closes it, and falls back to rest within one bit, so that a reader that waits for the closing transition gets
 * the last word too.
 */
public final class LtcSignal {
	private static final double RISE_US = 40;
	/** The part of half a cosine wave that lies between 10 % and 90 %: 1 - 2 acos(0.8) / pi. */
	private static final double STEEP_PART = 1 - 2 * Math.acos(0.8) / Math.PI;
	private static final int SHAPE_STEPS = 1024;
	private static final float[] SHAPE = shape();
	private static final int HALVES = 2 * LtcWord.BITS;

	private final LongFunction<LtcWord> words;
	private final long frames;
	private final float amplitude;
	private final float edge;
	private final int wholeHalf;
	private final int restHalf;
	private final int restUnit;
	private final float fraction;

	private final float[] block;
	private int filled;
	private int taken;
	private long frame;
	private boolean ended;

	private int boundary;
	private int boundaryRest;
	private float level;

	/**
	 * @param levelDbfs the peak level in decibels below full scale, 0 or negative
	 * @param words     the word of each frame, counted from 0
	 * @param frames    how many frames the signal lasts
	 */
	public LtcSignal(FrameRate rate, int sampleRate, double levelDbfs, LongFunction<LtcWord> words, long frames) {
		if (sampleRate < 8_000 || sampleRate > 384_000) {
			throw new TimecodeException("A sample rate of " + sampleRate + " Hz; expected 8000 to 384000");
		}
		if (!(levelDbfs <= 0 && levelDbfs >= -60)) {
			throw new TimecodeException("A timecode level of " + levelDbfs + " dBFS; expected -60 to 0");
		}
		this.words = words;
		this.frames = frames;
		this.amplitude = (float) Math.pow(10, levelDbfs / 20);
		this.edge = (float) (RISE_US / STEEP_PART / 2 * sampleRate / 1_000_000);
		long samples = (long) sampleRate * rate.denominator();
		this.restUnit = rate.numerator() * HALVES;
		this.wholeHalf = (int) (samples / restUnit);
		this.restHalf = (int) (samples % restUnit);
		this.fraction = 1f / restUnit;
		this.block = new float[(wholeHalf + 1) * (HALVES + 4) + 16];
		this.level = -amplitude;
		this.ended = frames <= 0;
	}

	/** How many samples the whole signal has, with its closing fall. */
	public static long samples(FrameRate rate, int sampleRate, long frames) {
		if (frames <= 0) {
			return 0;
		}
		long halves = HALVES * frames + 2;
		long unit = (long) rate.numerator() * HALVES;
		long perHalf = (long) sampleRate * rate.denominator();
		return halves / unit * perHalf + (halves % unit * perHalf + unit - 1) / unit;
	}

	/** Writes up to {@code count} samples between -1 and 1; returns how many, or -1 when the signal has ended. */
	public int read(float[] out, int offset, int count) {
		int done = 0;
		while (done < count) {
			if (taken == filled) {
				if (ended) {
					break;
				}
				fillBlock();
			}
			int part = Math.min(count - done, filled - taken);
			System.arraycopy(block, taken, out, offset + done, part);
			taken += part;
			done += part;
		}
		return done == 0 && count > 0 ? -1 : done;
	}

	private void fillBlock() {
		boundary -= filled;
		taken = 0;
		filled = 0;
		if (frame < frames) {
			word(words.apply(frame));
			frame++;
		} else {
			close();
			ended = true;
		}
	}

	private void word(LtcWord word) {
		long bits = word.data();
		for (int i = 0; i < LtcWord.BITS; i++) {
			transition();
			advance();
			if ((bits & 1) != 0) {
				transition();
			}
			advance();
			bits = i == LtcWord.DATA_BITS - 1 ? LtcWord.SYNC : bits >>> 1;
		}
		hold(firstOfEdge());
	}

	private void close() {
		transition();
		advance();
		int end = boundary;
		int first = Math.max(filled, firstOfEdge());
		hold(first);
		advance();
		int last = boundaryRest == 0 ? boundary : boundary + 1;
		for (int i = first; i < last; i++) {
			float to = Math.min(1, Math.max(-1, (i - end) / edge));
			block[filled++] = level * (1 - valueOf(to)) / 2;
		}
	}

	private void advance() {
		boundary += wholeHalf;
		boundaryRest += restHalf;
		if (boundaryRest >= restUnit) {
			boundaryRest -= restUnit;
			boundary++;
		}
	}

	private int firstOfEdge() {
		return Math.max(0, (int) Math.ceil(boundary + boundaryRest * fraction - edge));
	}

	private void hold(int until) {
		float[] to = block;
		float value = level;
		for (int i = filled; i < until; i++) {
			to[i] = value;
		}
		filled = Math.max(filled, until);
	}

	private void transition() {
		float at = boundaryRest * fraction;
		int first = Math.max(-boundary, (int) Math.ceil(at - edge));
		hold(boundary + first);
		int last = (int) (at + edge);
		float scale = -level;
		for (int i = first; i <= last; i++) {
			block[boundary + i] = scale * valueOf((i - at) / edge);
		}
		filled = boundary + last + 1;
		level = -level;
	}

	/** The shape of a rising transition between -1 and 1. */
	private static float valueOf(float x) {
		float place = (x + 1) * (SHAPE_STEPS / 2f);
		int step = (int) place;
		float low = SHAPE[step];
		return low + (place - step) * (SHAPE[step + 1] - low);
	}

	private static float[] shape() {
		float[] values = new float[SHAPE_STEPS + 2];
		for (int i = 0; i < values.length; i++) {
			values[i] = (float) Math.sin(Math.PI / 2 * (2.0 * Math.min(i, SHAPE_STEPS) / SHAPE_STEPS - 1));
		}
		return values;
	}
}
