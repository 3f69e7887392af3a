package org.girandole.music.analysis;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/**
 * Picks onsets from the rise of the spectrum: a value that is the greatest within 30 ms and exceeds the mean around it by a
 * threshold, as in S. Böck, F. Krebs and M. Schedl, Evaluating the online capabilities of onset detection methods,
 * ISMIR 2012. The moment is then looked for at 1 ms in the energy of the differenced signal.
 */
final class OnsetFinder {
    private static final int MAX_REACH = 3;
    private static final int MEAN_BEFORE = 12;
    private static final int MEAN_AFTER = 8;
    private static final int LEAST_GAP = 4;
    /** Above the mean around it, in units of the flux; small ripples of held notes stay below. */
    private static final float THRESHOLD = 1f;
    /** And this many times the mean: in dense music the ripples grow with everything else. */
    private static final float RATIO = 1.15f;
    /** Noise ripples by chance; an onset exceeds so many times the median deviation from the median in its stretch. */
    private static final float RIPPLES = 5;
    private static final int RIPPLE_SPAN = 3 * Features.RATE;
    private static final int SEARCH_BEFORE_MS = 35;
    private static final int SEARCH_AFTER_MS = 15;

    private OnsetFinder() {
    }

    static List<Onset> find(Features f) {
        List<Integer> picked = pick(f.flux());
        float[] heights = new float[picked.size()];
        for (int i = 0; i < heights.length; i++) {
            heights[i] = f.flux()[picked.get(i)];
        }
        float[] sorted = heights.clone();
        Arrays.sort(sorted);
        double[] usual = { mean(f.low()), mean(f.mid()), mean(f.high()) };
        List<Onset> onsets = new ArrayList<>();
        for (int i = 0; i < heights.length; i++) {
            int rank = Arrays.binarySearch(sorted, heights[i]);
            double strength = (double) Math.max(rank, 0) / Math.max(1, sorted.length - 1);
            onsets.add(new Onset(moment(f, picked.get(i)), strength, band(f, picked.get(i), usual)));
        }
        return onsets;
    }

    private static List<Integer> pick(float[] flux) {
        List<Integer> picked = new ArrayList<>();
        float[] ripple = ripple(flux);
        int last = -LEAST_GAP;
        for (int n = 0; n < flux.length; n++) {
            float mean = mean(flux, n - MEAN_BEFORE, n + MEAN_AFTER);
            boolean high = flux[n] > mean * RATIO && flux[n] > mean + Math.max(THRESHOLD, RIPPLES * ripple[n / RIPPLE_SPAN]);
            if (high && n - last >= LEAST_GAP && flux[n] >= max(flux, n - MAX_REACH, n + MAX_REACH)) {
                picked.add(n);
                last = n;
            }
        }
        return picked;
    }

    private static float[] ripple(float[] flux) {
        float[] ripple = new float[flux.length / RIPPLE_SPAN + 1];
        for (int s = 0; s < ripple.length; s++) {
            float[] part = Arrays.copyOfRange(flux, s * RIPPLE_SPAN, Math.min(flux.length, (s + 1) * RIPPLE_SPAN));
            float median = median(part);
            for (int i = 0; i < part.length; i++) {
                part[i] = Math.abs(part[i] - median);
            }
            ripple[s] = median(part);
        }
        return ripple;
    }

    private static float median(float[] values) {
        Arrays.sort(values);
        return values.length == 0 ? 0 : values[values.length / 2];
    }

    private static float mean(float[] values, int from, int to) {
        int a = Math.max(0, from);
        int b = Math.min(values.length - 1, to);
        float sum = 0;
        for (int i = a; i <= b; i++) {
            sum += values[i];
        }
        return sum / (b - a + 1);
    }

    private static float max(float[] values, int from, int to) {
        float most = 0;
        for (int i = Math.max(0, from); i <= Math.min(values.length - 1, to); i++) {
            most = Math.max(most, values[i]);
        }
        return most;
    }

    private static double mean(float[] values) {
        double sum = 0;
        for (float v : values) {
            sum += v;
        }
        return sum / Math.max(1, values.length) + 1e-9;
    }

    private static Band band(Features f, int n, double[] usual) {
        double low = f.low()[n] / usual[0];
        double mid = f.mid()[n] / usual[1];
        double high = f.high()[n] / usual[2];
        return low >= mid && low >= high ? Band.LOW : high >= mid ? Band.HIGH : Band.MID;
    }

    /** The millisecond before which little and after which much happens: the greatest ratio of 8 ms after to 16 ms before. */
    private static long moment(Features f, int frame) {
        float[] attack = f.attack();
        int centre = (int) (frame * Features.STEP_US / 1000);
        int best = -1;
        double most = 0;
        for (int ms = Math.max(1, centre - SEARCH_BEFORE_MS); ms <= Math.min(attack.length - 9, centre + SEARCH_AFTER_MS); ms++) {
            double after = 0;
            for (int i = 0; i < 8; i++) {
                after += attack[ms + i];
            }
            double before = 0;
            for (int i = Math.max(0, ms - 16); i < ms; i++) {
                before += attack[i];
            }
            double gain = after / 8 - before / 16;
            double ratio = gain <= 0 ? 0 : gain * gain / (before / 16 + 1e-7);
            if (ratio > most) {
                most = ratio;
                best = ms;
            }
        }
        return best < 0 ? frame * Features.STEP_US : best * 1000L;
    }
}
