package org.girandole.timecode.reader;

import java.util.Arrays;

import org.girandole.timecode.ltc.LtcWord;

/**
 * How well a row of labels is borne out by the recording, label bit by label bit. What each word says for or against its label is added up;
 * the row is proven while its weakest bit has been supported enough.
 */
final class Support {
	/** The natural logarithm of the odds that the weakest bit must have for it: one in a million. */
	private static final double NEEDED = 14;
	/** Old support counts no more than this, so that a row that ceases to be true is soon seen to. */
	private static final double MOST = 24;

	private final double[] bits = new double[LtcWord.DATA_BITS];

	void restart() {
		Arrays.fill(bits, 0);
	}

	void add(SoftWord word, long label) {
		float[] ones = word.ones();
		for (long rest = LtcWord.LABEL_MASK; rest != 0; rest &= rest - 1) {
			int bit = Long.numberOfTrailingZeros(rest);
			double speaks = (label >>> bit & 1) != 0 ? ones[bit] : -ones[bit];
			bits[bit] = Math.min(MOST, bits[bit] + speaks);
		}
	}

	boolean proven() {
		for (long rest = LtcWord.LABEL_MASK; rest != 0; rest &= rest - 1) {
			if (bits[Long.numberOfTrailingZeros(rest)] < NEEDED) {
				return false;
			}
		}
		return true;
	}
}
