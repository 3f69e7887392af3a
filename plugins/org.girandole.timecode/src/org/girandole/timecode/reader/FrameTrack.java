package org.girandole.timecode.reader;

import java.util.AbstractList;
import java.util.Arrays;
import java.util.Optional;
import java.util.RandomAccess;

import org.girandole.timecode.ltc.LtcWord;

/**
 * All frames found in a channel, in the order of the recording. Kept in plain arrays, forty bytes a frame, so that the frames of a whole
 * evening fit into little memory; unmodifiable.
 */
public final class FrameTrack extends AbstractList<LtcFrame> implements RandomAccess {
	private static final int REVERSE = 4;
	private static final Quality[] QUALITIES = Quality.values();

	private final double[] begins;
	private final double[] ends;
	private final long[] words;
	private final float[] confidences;
	private final float[] levels;
	private final float[] ratios;
	private final float[] jitters;
	private final byte[] states;

	private FrameTrack(Builder from) {
		begins = Arrays.copyOf(from.begins, from.size);
		ends = Arrays.copyOf(from.ends, from.size);
		words = Arrays.copyOf(from.words, from.size);
		confidences = Arrays.copyOf(from.confidences, from.size);
		levels = Arrays.copyOf(from.levels, from.size);
		ratios = Arrays.copyOf(from.ratios, from.size);
		jitters = Arrays.copyOf(from.jitters, from.size);
		states = Arrays.copyOf(from.states, from.size);
	}

	@Override
	public int size() {
		return begins.length;
	}

	@Override
	public LtcFrame get(int index) {
		return new LtcFrame(begins[index], ends[index], new LtcWord(words[index]), quality(index), confidences[index], (states[index] & REVERSE) != 0,
				levels[index], ratios[index], jitters[index]);
	}

	Quality quality(int index) {
		return QUALITIES[states[index] & 3];
	}

	double begin(int index) {
		return begins[index];
	}

	double end(int index) {
		return ends[index];
	}

	/** The frame that covers a sample; empty where there is none. */
	public Optional<LtcFrame> at(double sample) {
		int found = Arrays.binarySearch(begins, sample);
		int index = found >= 0 ? found : -found - 2;
		return index >= 0 && sample < ends[index] ? Optional.of(get(index)) : Optional.empty();
	}

	/** Collects frames as they are found. */
	static final class Builder {
		private double[] begins = new double[256];
		private double[] ends = new double[256];
		private long[] words = new long[256];
		private float[] confidences = new float[256];
		private float[] levels = new float[256];
		private float[] ratios = new float[256];
		private float[] jitters = new float[256];
		private byte[] states = new byte[256];
		private int size;

		void add(LtcFrame frame) {
			if (size == begins.length) {
				grow(size + size / 2);
			}
			begins[size] = frame.begin();
			ends[size] = frame.end();
			words[size] = frame.word().data();
			confidences[size] = (float) frame.confidence();
			levels[size] = (float) frame.levelDbfs();
			ratios[size] = (float) frame.snrDb();
			jitters[size] = (float) frame.jitterUs();
			states[size] = (byte) (frame.quality().ordinal() | (frame.reverse() ? REVERSE : 0));
			size++;
		}

		private void grow(int to) {
			begins = Arrays.copyOf(begins, to);
			ends = Arrays.copyOf(ends, to);
			words = Arrays.copyOf(words, to);
			confidences = Arrays.copyOf(confidences, to);
			levels = Arrays.copyOf(levels, to);
			ratios = Arrays.copyOf(ratios, to);
			jitters = Arrays.copyOf(jitters, to);
			states = Arrays.copyOf(states, to);
		}

		FrameTrack build() {
			return new FrameTrack(this);
		}
	}
}
