package org.girandole.music.analysis;

/**
 * The beginning of a sound.
 *
 * @param timeUs   from the start of the track
 * @param strength 0 to 1: the share of the track's onsets that are weaker
 * @param band     where it is strongest, compared with what is usual there
 */
public record Onset(long timeUs, double strength, Band band) {
}
