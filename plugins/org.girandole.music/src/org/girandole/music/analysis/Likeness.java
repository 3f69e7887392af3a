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
    /** Chosen on the example, held against the generated pieces. */
    private static final int NEAR_STEPS = 40;
    private static final double AS_LIKELY = 1.5;
    private static final double STANDS_OUT = 3;

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
        int steps = (int) Math.max(0, Math.ceil((toUs - fromUs) / STEP));
        double[] sums = new double[steps + 1];
        int best = 0;
        for (int i = 0; i < steps; i++) {
            double t = fromUs + i * STEP;
            double one = before.applyAsDouble(t);
            double other = after.applyAsDouble(t);
            sums[i + 1] = sums[i] + unlikeness(a, b, t, one) - unlikeness(a, b, t, other) + attacks(a, b, t, one) - attacks(a, b, t, other);
            if (sums[i + 1] < sums[best]) {
                best = i + 1;
            }
        }
        best = onStroke(a.flux(), fromUs, sums, best);
        return best == 0 ? fromUs : fromUs + (best - 0.5) * STEP;
    }

    /**
     * Where the music goes on alike for a moment on both sides, the best place is chance; scissors cut before a stroke. The strongest of the
     * strokes near by that are as likely, if it stands out.
     */
    private static int onStroke(float[] flux, double fromUs, double[] sums, int best) {
        int chosen = best;
        for (int i = Math.max(0, best - NEAR_STEPS); i <= Math.min(sums.length - 1, best + NEAR_STEPS); i++) {
            if (sums[i] - sums[best] <= AS_LIKELY && at(flux, fromUs + i * STEP, 0) > at(flux, fromUs + chosen * STEP, 0)) {
                chosen = i;
            }
        }
        return at(flux, fromUs + chosen * STEP, 0) > STANDS_OUT * (0.5 + at(flux, fromUs + best * STEP, 0)) ? chosen : best;
    }

    /** Whether a stretch is the same music on both sides by every ten milliseconds of it, and not only by its harmony. */
    static boolean holds(Features old, Features now, EditMap.Stretch stretch) {
        double speed = (double) (stretch.newEndUs() - stretch.newStartUs()) / (stretch.oldEndUs() - stretch.oldStartUs());
        double sum = 0;
        int steps = 0;
        for (double t = stretch.oldStartUs(); t < stretch.oldEndUs(); t += STEP) {
            sum += unlikeness(old, now, t, stretch.newStartUs() + (t - stretch.oldStartUs()) * speed);
            steps++;
        }
        return sum < HALF_WAY * steps;
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
