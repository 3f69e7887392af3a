package org.girandole.timecode.reader;

import java.util.Locale;

import org.girandole.timecode.ltc.LtcWord;

/**
 * A frame of timecode found in a recording.
 *
 * @param begin      where it begins, in samples from the recording's beginning; in a recording that is played backwards that is the frame's end
 * @param end        where it ends, always behind its beginning
 * @param word       its bits, the label mended where {@code quality} says so
 * @param confidence the probability that the label is right, as estimated from the noise and the frames around
 * @param reverse    played backwards
 * @param levelDbfs  peak level of the signal in decibels below full scale
 * @param snrDb      how far noise and distortion lie below the signal, in decibels, measured on half bit cells
 * @param jitterUs   root mean square of the distance of the transitions from where they are expected, in microseconds
 */
public record LtcFrame(double begin, double end, LtcWord word, Quality quality, double confidence, boolean reverse, double levelDbfs, double snrDb,
		double jitterUs) {

	/** The length of the frame in samples. */
	public double length() {
		return end - begin;
	}

	LtcFrame doubted() {
		return new LtcFrame(begin, end, word, Quality.DOUBTFUL, Math.min(confidence, 0.5), reverse, levelDbfs, snrDb, jitterUs);
	}

	@Override
	public String toString() {
		return String.format(Locale.ROOT, "%s at %.1f, %s, %.1f dBFS", word.digits(), begin, quality, levelDbfs);
	}
}
