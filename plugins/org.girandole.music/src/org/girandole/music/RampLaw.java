package org.girandole.music;

/** How the tempo moves between the two ends of a ramp. */
public enum RampLaw {
    /** Each beat changes the tempo by the same number of bpm: {@code bpm(x) = v0 + (v1 - v0) x / L}. */
    LINEAR_IN_BEATS,
    /** Each second changes the tempo by the same number of bpm: {@code bpm(t) = v0 + (v1 - v0) t / T}. */
    LINEAR_IN_TIME
}
