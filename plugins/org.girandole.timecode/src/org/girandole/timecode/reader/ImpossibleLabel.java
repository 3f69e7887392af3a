package org.girandole.timecode.reader;

import org.girandole.timecode.ltc.LtcWord;

/** A clearly read label that cannot exist at the recording's rate, as one that drop-frame counting leaves out. */
public record ImpossibleLabel(double sample, LtcWord word, String why) {
}
