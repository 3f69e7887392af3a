package org.girandole.music.analysis;

/** A stretch in which nothing is heard. */
public record Silence(long startUs, long endUs) {
}
