package org.girandole.protocol;

/**
 * A firing position.
 *
 * @param known whether the site has it
 * @param cues how many cues are fired from it
 */
public record LaneView(String position, boolean known, int cues) {
}
