package org.girandole.music.analysis;

/**
 * A stretch of the track that is alike within itself.
 *
 * @param startUs on the first beat of a bar where bars are known
 * @param endUs   start of the next, or the end of the track
 * @param label   A, B, ...; the same for stretches that sound alike
 * @param change  0 to 1: how clear the boundary at its start is; 1 for the start of the track
 */
public record Section(long startUs, long endUs, String label, double change) {
}
