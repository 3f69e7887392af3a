package org.girandole.music.analysis;

import java.util.function.DoubleUnaryOperator;

/** How alike two tracks are from moment to moment, ten milliseconds at a time, and where that changes. */
final class Likeness {
    /** Longer stretches without likeness on both sides are a replacement. */
    static final long REPLACED_US = 600_000;
    /** Unlikeness of two tracks that have nothing to do with each other is about 1; of the same one, 0.1 to 0.3. */
    private static final double HALF_WAY = 0.55;
    /** Silence is like silence, whatever dither it has. */
    private static final double SILENT_DB = -70;
    private static final double STEP = Features.STEP_US;

    private Likeness() {
    }

    /** Mean difference of the curves, each relative to its size; 0 for the same, about 1 for strangers. */
    private static double unlikeness(Features a, Features b, double aUs, double bUs) {
        if (at(a.level(), aUs, -120) < SILENT_DB && at(b.level(), bUs, -120) < SILENT_DB) {
            return 0;
        }
        double level = Math.min(1.5, Math.abs(at(a.level(), aUs, -120) - at(b.level(), bUs, -120)) / 8);
        double flux = relative(at(a.flux(), aUs, 0), at(b.flux(), bUs, 0));
        double high = relative(at(a.high(), aUs, 0), at(b.high(), bUs, 0));
        double chroma = chroma(a, b, aUs, bUs);
        return (level + flux + high + 2 * chroma) / 5 * 2;
    }

    /** The same of ten milliseconds of attacks, one by one: tells repetitions apart that were not played quite alike. */
    private static double attacks(Features a, Features b, double aUs, double bUs) {
        int i = (int) Math.round(aUs / 1000);
        int j = (int) Math.round(bUs / 1000);
        if (i < 0 || j < 0 || i + 10 > a.attack().length || j + 10 > b.attack().length) {
            return 1;
        }
        double away = 0;
        double sum = 1e-6;
        for (int k = 0; k < 10; k++) {
            away += Math.abs(a.attack()[i + k] - b.attack()[j + k]);
            sum += a.attack()[i + k] + b.attack()[j + k];
        }
        return away / sum;
    }

    private static double relative(double x, double y) {
        return Math.abs(x - y) / (0.5 + x + y);
    }

    private static double at(float[] curve, double us, double outside) {
        double n = us / STEP;
        int i = (int) Math.floor(n);
        if (i < 0 || i + 1 >= curve.length) {
            return outside;
        }
        double share = n - i;
        return curve[i] * (1 - share) + curve[i + 1] * share;
    }

    private static double chroma(Features a, Features b, double aUs, double bUs) {
        int i = (int) Math.round(aUs / Features.SLOW_STEP_US);
        int j = (int) Math.round(bUs / Features.SLOW_STEP_US);
        if (i < 0 || j < 0 || i >= a.chroma().length || j >= b.chroma().length) {
            return 1;
        }
        double ab = 0;
        double aa = 0;
        double bb = 0;
        for (int c = 0; c < 12; c++) {
            ab += a.chroma()[i][c] * b.chroma()[j][c];
            aa += a.chroma()[i][c] * a.chroma()[i][c];
            bb += b.chroma()[j][c] * b.chroma()[j][c];
        }
        if (aa < 1e-6 && bb < 1e-6) {
            return 0;
        }
        return 1 - ab / Math.sqrt(aa * bb + 1e-12);
    }

    /**
     * The moment in track {@code a}, between two others, up to which it is more like {@code b} by the first map and from
     * which on by the second.
     */
    static double meeting(Features a, Features b, DoubleUnaryOperator before, DoubleUnaryOperator after, double fromUs, double toUs) {
        double sum = 0;
        double least = 0;
        double best = fromUs;
        for (double t = fromUs; t < toUs; t += STEP) {
            double one = before.applyAsDouble(t);
            double other = after.applyAsDouble(t);
            sum += unlikeness(a, b, t, one) - unlikeness(a, b, t, other) + attacks(a, b, t, one) - attacks(a, b, t, other);
            if (sum < least) {
                least = sum;
                best = t + STEP / 2;
            }
        }
        return best;
    }

    /** From a moment of the old track that is certainly alike, forwards (1) or backwards (-1), how far likeness goes. */
    static double edge(Features old, Features now, DoubleUnaryOperator toNew, double fromUs, double reachUs, int direction) {
        double sum = 0;
        double most = 0;
        double best = fromUs;
        for (double t = fromUs; direction * (reachUs - t) > 0; t += direction * STEP) {
            sum += HALF_WAY - unlikeness(old, now, t, toNew.applyAsDouble(t));
            if (sum >= most) {
                most = sum;
                best = t + direction * STEP;
            }
        }
        return direction * (best - reachUs) > -2 * STEP ? reachUs : best;
    }
}
