package org.girandole.timecode.reader;

/** Measures what a channel holds as plain audio. */
final class ChannelMeter {
	/** Samples so near to full scale count as cut off when several follow one another. */
	private static final float FULL = 0.9985f;
	private static final int RUN = 3;

	private double sum;
	private double squares;
	private float least = Float.MAX_VALUE;
	private float most = -Float.MAX_VALUE;
	private long count;
	private long clipped;
	private int run;

	void add(float[] samples, int offset, int frames, int stride) {
		double blockSum = 0;
		double blockSquares = 0;
		float low = least;
		float high = most;
		for (int i = 0, at = offset; i < frames; i++, at += stride) {
			float sample = samples[at];
			blockSum += sample;
			blockSquares += sample * sample;
			low = Math.min(low, sample);
			high = Math.max(high, sample);
		}
		sum += blockSum;
		squares += blockSquares;
		least = low;
		most = high;
		count += frames;
		if (high >= FULL || low <= -FULL) {
			countClipped(samples, offset, frames, stride);
		}
	}

	private void countClipped(float[] samples, int offset, int frames, int stride) {
		for (int i = 0, at = offset; i < frames; i++, at += stride) {
			run = Math.abs(samples[at]) >= FULL ? run + 1 : 0;
			clipped += run == RUN ? RUN : run > RUN ? 1 : 0;
		}
	}

	ChannelAudio result() {
		if (count == 0) {
			return new ChannelAudio(Double.NEGATIVE_INFINITY, Double.NEGATIVE_INFINITY, 0, 0);
		}
		double mean = sum / count;
		double variance = Math.max(0, squares / count - mean * mean);
		return new ChannelAudio(20 * Math.log10(Math.max(most, -least)), 10 * Math.log10(variance), mean, clipped);
	}
}
