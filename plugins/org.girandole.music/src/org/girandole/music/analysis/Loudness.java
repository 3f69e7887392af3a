package org.girandole.music.analysis;

import java.util.Arrays;

/**
 * Loudness by EBU R 128.
 *
 * @param integratedLufs the whole programme, gated; negative infinity for silence or less than 400 ms of sound
 * @param shortTerm      over 3 s, one value each 100 ms; value i is for the 3 s that end at (i + 1) * 100 ms, silence before
 *                       the start included; negative infinity for silence
 * @param momentary      over 400 ms, in the same way
 */
public record Loudness(double integratedLufs, float[] shortTerm, float[] momentary) {
    /** Step of the curves. */
    public static final long STEP_US = 100_000;

    public Loudness {
        shortTerm = shortTerm.clone();
        momentary = momentary.clone();
    }

    @Override
    public float[] shortTerm() {
        return shortTerm.clone();
    }

    @Override
    public float[] momentary() {
        return momentary.clone();
    }

    /** The greatest short-term loudness, in LUFS. */
    public double maxShortTermLufs() {
        double most = Double.NEGATIVE_INFINITY;
        for (float value : shortTerm) {
            most = Math.max(most, value);
        }
        return most;
    }

    /** The short-term loudness of the three seconds around a time, in LUFS. */
    public double shortTermAround(long timeUs) {
        long index = Math.floorDiv(timeUs + 1_500_000, STEP_US) - 1;
        if (index < 0 || shortTerm.length == 0) {
            return Double.NEGATIVE_INFINITY;
        }
        return shortTerm[(int) Math.min(index, shortTerm.length - 1L)];
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof Loudness l && Double.compare(integratedLufs, l.integratedLufs) == 0
                && Arrays.equals(shortTerm, l.shortTerm) && Arrays.equals(momentary, l.momentary);
    }

    @Override
    public int hashCode() {
        return 31 * Double.hashCode(integratedLufs) + Arrays.hashCode(shortTerm);
    }
}
