package org.girandole.timecode.reader;

import java.util.function.Consumer;

/**
 * Reads linear timecode from one channel of audio that arrives piece by piece, at any level, either polarity, half to twice the speed, forwards
 * or backwards. Frames come out in the order of the recording, a little behind the audio.
 */
public final class LtcDecoder {
	/** Below this sample rate a bit at the highest speed has too few samples. */
	public static final int LEAST_SAMPLE_RATE = 8_000;
	/** Above this nothing is gained. */
	public static final int MOST_SAMPLE_RATE = 384_000;

	private final WordDecoder words;
	private final LabelTracker labels;

	/** @throws IllegalArgumentException if the sample rate is out of range */
	public LtcDecoder(int sampleRate, Consumer<LtcFrame> frames) {
		if (sampleRate < LEAST_SAMPLE_RATE || sampleRate > MOST_SAMPLE_RATE) {
			throw new IllegalArgumentException("A sample rate of " + sampleRate + " Hz; timecode can be read at " + LEAST_SAMPLE_RATE + " to " + MOST_SAMPLE_RATE);
		}
		this.labels = new LabelTracker(sampleRate, frames);
		this.words = new WordDecoder(sampleRate, labels::word);
	}

	/** Takes in samples of one channel, {@code stride} places apart in the array. */
	public void write(float[] samples, int offset, int count, int stride) {
		words.write(samples, offset, count, stride);
	}

	/** Tells that the recording has ended: the last frames come out. */
	public void finish() {
		words.finish();
		labels.finish();
	}
}
