package org.girandole.music.analysis;

/** Where in the spectrum an onset is strongest. */
public enum Band {
    /** Below 200 Hz: bass drum, bass, timpani. */
    LOW,
    /** 200 to 2500 Hz. */
    MID,
    /** Above 2500 Hz: cymbals, snares, consonants. */
    HIGH
}
