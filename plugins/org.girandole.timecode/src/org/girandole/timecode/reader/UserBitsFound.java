package org.girandole.timecode.reader;

import java.util.Optional;

import org.girandole.timecode.ltc.ReleaseMark;

/**
 * What the user bits of the good frames say.
 *
 * @param mark    slot and stamp, if both pages were found with the same slot
 * @param marked  good frames that carry a page of this mark
 * @param foreign good frames whose user bits hold a mark of another slot or stamp
 * @param empty   good frames whose user bits are all 0
 * @param sample  the commonest user bits that are neither empty nor of a mark, as eight hexadecimal digits; empty if there are none
 */
public record UserBitsFound(Optional<ReleaseMark> mark, int marked, int foreign, int empty, String sample) {
}
