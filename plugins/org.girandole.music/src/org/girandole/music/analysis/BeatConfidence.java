package org.girandole.music.analysis;

import java.util.List;

/**
 * How far beats can be relied on: they should meet onsets, and lie evenly. Noise and speech have onsets enough near any
 * grid, but not on it.
 */
final class BeatConfidence {
    /** Mean evidence of the beats found in noise and in music with a clear pulse, as measured on generated tracks. */
    private static final double IN_NOISE = 1.2;
    private static final double IN_MUSIC = 2.2;
    /** Share of beats with an onset within 15 ms, likewise. */
    private static final double ON_ONSETS_IN_NOISE = 0.35;
    private static final double ON_ONSETS_IN_MUSIC = 0.85;
    private static final long ON_US = 15_000;

    private BeatConfidence() {
    }

    static double of(List<Beat> beats, List<Onset> onsets) {
        double evidence = beats.stream().mapToDouble(Beat::evidence).average().orElse(0);
        int next = 0;
        int on = 0;
        for (Beat beat : beats) {
            while (next < onsets.size() && onsets.get(next).timeUs() < beat.timeUs() - ON_US) {
                next++;
            }
            on += next < onsets.size() && onsets.get(next).timeUs() <= beat.timeUs() + ON_US ? 1 : 0;
        }
        double hit = (double) on / beats.size();
        return between(evidence, IN_NOISE, IN_MUSIC) * between(hit, ON_ONSETS_IN_NOISE, ON_ONSETS_IN_MUSIC);
    }

    private static double between(double value, double none, double full) {
        return Math.max(0, Math.min(1, (value - none) / (full - none)));
    }
}
