package org.girandole.music.analysis;

/**
 * A beat.
 *
 * @param timeUs    from the start of the track
 * @param inBar     its place in the bar from 1, or 0 where no bar could be told
 * @param evidence  how much more than usual begins here, in standard deviations; around 0 where nothing is heard
 */
public record Beat(long timeUs, int inBar, double evidence) {
    public boolean isDownbeat() {
        return inBar == 1;
    }
}
