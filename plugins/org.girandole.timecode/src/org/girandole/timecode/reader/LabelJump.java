package org.girandole.timecode.reader;

import org.girandole.timecode.ltc.LtcWord;

/**
 * A place where the labels do not count on.
 *
 * @param sample where the new label begins
 * @param from   the last good label before it
 * @param to     the label found
 * @param frames how many frames it is ahead of the label that was due; negative if behind
 */
public record LabelJump(double sample, LtcWord from, LtcWord to, long frames) {
}
