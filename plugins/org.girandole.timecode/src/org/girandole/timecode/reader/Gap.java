package org.girandole.timecode.reader;

import org.girandole.timecode.ltc.LtcWord;

/**
 * A stretch without a good frame between two good ones.
 *
 * @param beginSample  the end of the last good frame before it
 * @param endSample    the beginning of the first good frame behind it
 * @param lostFrames   how many frames would have fitted
 * @param doubtful     how many doubtful ones were found there
 * @param before       the last good label before it
 * @param after        the first good label behind it
 * @param labelsGoOn   true if the label behind it is the one that time alone would have brought
 */
public record Gap(double beginSample, double endSample, long lostFrames, int doubtful, LtcWord before, LtcWord after, boolean labelsGoOn) {
}
