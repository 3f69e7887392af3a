package org.girandole.timecode.reader;

/**
 * A word as the recording shows it: not bits, but how strongly each bit speaks for one or zero.
 *
 * @param begin    where the word begins, in samples; when it is played backwards, that is the end of its sync word
 * @param end      where it ends
 * @param reverse  played backwards
 * @param data     the data bits as they are most likely
 * @param ones     for each of the 64 data bits the natural logarithm of the odds that it is a one
 * @param sync     how well the sync word fits, 1 without noise, around 0 for noise alone
 * @param height   mean height of the flat parts, in parts of full scale
 * @param signalToNoise power ratio of a half cell's area to the noise on it
 * @param jitterUs root mean square of the transitions' distance from their expected places, in microseconds
 */
record SoftWord(double begin, double end, boolean reverse, long data, float[] ones, double sync, double height, double signalToNoise, double jitterUs) {

	/** The same word seen from the other end: what stood at a place stands at {@code mirror - place}. */
	SoftWord mirrored(double mirror) {
		return new SoftWord(mirror - end, mirror - begin, !reverse, data, ones, sync, height, signalToNoise, jitterUs);
	}

	/** The data bits as they are most likely. */
	static long mostLikely(float[] ones) {
		long data = 0;
		for (int bit = 0; bit < ones.length; bit++) {
			data |= (long) (~Float.floatToRawIntBits(ones[bit]) >>> 31) << bit;
		}
		return data;
	}

	/** How strongly the recording speaks against these data bits, among those in the mask: 0 if every one fits. */
	double against(long expected, long mask) {
		double sum = 0;
		for (long rest = (data ^ expected) & mask; rest != 0; rest &= rest - 1) {
			sum += Math.abs(ones[Long.numberOfTrailingZeros(rest)]);
		}
		return sum;
	}

	/** How strongly the weakest of the bits in the mask speaks. */
	double weakest(long mask) {
		float least = Float.MAX_VALUE;
		for (long rest = mask; rest != 0; rest &= rest - 1) {
			least = Math.min(least, Math.abs(ones[Long.numberOfTrailingZeros(rest)]));
		}
		return least;
	}

	/** The logarithm of the probability that all bits in the mask are as the data bits say. */
	double certainty(long mask) {
		double sum = 0;
		for (long rest = mask; rest != 0; rest &= rest - 1) {
			sum -= Math.log1p(Math.exp(-Math.abs(ones[Long.numberOfTrailingZeros(rest)])));
		}
		return sum;
	}
}
