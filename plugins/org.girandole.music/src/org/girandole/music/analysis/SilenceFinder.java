package org.girandole.music.analysis;

import java.util.ArrayList;
import java.util.List;

/** Finds stretches of at least half a second in which the level stays below -60 dB of full scale. */
final class SilenceFinder {
    private static final float QUIET_DB = -60;
    private static final long LEAST_US = 500_000;

    private SilenceFinder() {
    }

    static List<Silence> find(Features f) {
        List<Silence> silences = new ArrayList<>();
        int from = -1;
        for (int i = 0; i <= f.size(); i++) {
            boolean quiet = i < f.size() && f.level()[i] < QUIET_DB;
            if (quiet && from < 0) {
                from = i;
            } else if (!quiet && from >= 0) {
                long start = from * Features.STEP_US;
                long end = i == f.size() ? f.lengthUs() : i * Features.STEP_US;
                if (end - start >= LEAST_US) {
                    silences.add(new Silence(start, end));
                }
                from = -1;
            }
        }
        return silences;
    }
}
