package org.girandole.music.analysis;

import java.util.ArrayList;
import java.util.List;

/** The best global alignment of two tracks with affine gaps, ten steps a second; fewer for tracks of more than ten minutes. */
final class RoughAlignment {
    private static final int MOST_STEPS = 6000;
    /** What a pair of steps must be alike to be worth more than leaving both out. */
    private static final float ALIKE = 0.5f;
    private static final float OPEN = 2f;
    private static final float EXTEND = 0.03f;
    /** Gaps up to this many steps are a difference of speed, not an edit. */
    private static final int DRIFT_STEPS = 2;
    private static final int SHORTEST_RUN = 15;
    private static final byte PAIR = 0;
    private static final byte LEFT_OUT = 1;
    private static final byte PUT_IN = 2;

    private final long stepUs;
    private final List<Run> runs = new ArrayList<>();
    private double likeness;

    /** Steps of both tracks that belong together, all at about one delay. */
    record Run(long oldFromUs, long oldToUs, double delayFromUs, double delayToUs) {
    }

    private RoughAlignment(long stepUs) {
        this.stepUs = stepUs;
    }

    List<Run> runs() {
        return runs;
    }

    /** Mean likeness of the pairs, 0 to 1. */
    double likeness() {
        return likeness;
    }

    static RoughAlignment of(Features old, Features now) {
        int every = Math.max(1, (Math.max(old.chroma().length, now.chroma().length) + MOST_STEPS - 1) / MOST_STEPS);
        RoughAlignment rough = new RoughAlignment(every * Features.SLOW_STEP_US);
        double[] mean = meanTimbre(old, now);
        rough.align(vectors(old, every, mean), vectors(now, every, mean));
        return rough;
    }

    private static double[] meanTimbre(Features a, Features b) {
        double[] mean = new double[a.timbre().length == 0 ? 0 : a.timbre()[0].length];
        for (Features f : new Features[] { a, b }) {
            for (float[] t : f.timbre()) {
                for (int k = 0; k < mean.length; k++) {
                    mean[k] += t[k] / (a.timbre().length + b.timbre().length);
                }
            }
        }
        return mean;
    }

    /** Pitch classes and the departure of the spectral shape from the usual, each of length 1/sqrt(2). */
    private static float[][] vectors(Features f, int every, double[] meanTimbre) {
        float[][] vectors = new float[f.chroma().length / every][];
        for (int i = 0; i < vectors.length; i++) {
            float[] v = new float[12 + meanTimbre.length];
            for (int s = i * every; s < (i + 1) * every; s++) {
                for (int c = 0; c < 12; c++) {
                    v[c] += f.chroma()[s][c];
                }
                for (int k = 0; k < meanTimbre.length; k++) {
                    v[12 + k] += (float) (f.timbre()[s][k] - meanTimbre[k]);
                }
            }
            normalise(v, 0, 12);
            normalise(v, 12, v.length);
            vectors[i] = v;
        }
        return vectors;
    }

    private static void normalise(float[] v, int from, int to) {
        double squares = 0;
        for (int k = from; k < to; k++) {
            squares += v[k] * v[k];
        }
        float by = (float) (1 / Math.sqrt(2 * squares + 1e-6));
        for (int k = from; k < to; k++) {
            v[k] *= by;
        }
    }

    private static float dot(float[] a, float[] b) {
        float sum = 0;
        for (int k = 0; k < a.length; k++) {
            sum += a[k] * b[k];
        }
        return sum;
    }

    private void align(float[][] old, float[][] now) {
        int n = old.length;
        int m = now.length;
        float[][] score = new float[3][m + 1];
        float[][] above = new float[3][m + 1];
        // For each cell and each of three states, the state it came from, two bits each.
        byte[][] from = new byte[n + 1][m + 1];
        for (int i = 0; i <= n; i++) {
            float[][] swap = above;
            above = score;
            score = swap;
            for (int j = 0; j <= m; j++) {
                step(old, now, score, above, from, i, j);
            }
        }
        trace(old, now, score, from);
    }

    private static void step(float[][] old, float[][] now, float[][] score, float[][] above, byte[][] from, int i, int j) {
        if (i == 0 && j == 0) {
            score[PAIR][0] = 0;
            score[LEFT_OUT][0] = Float.NEGATIVE_INFINITY;
            score[PUT_IN][0] = Float.NEGATIVE_INFINITY;
            return;
        }
        int pair = PAIR;
        int leftOut = PAIR;
        int putIn = PAIR;
        if (i > 0 && j > 0) {
            pair = best(above[PAIR][j - 1], above[LEFT_OUT][j - 1], above[PUT_IN][j - 1]);
            score[PAIR][j] = above[pair][j - 1] + dot(old[i - 1], now[j - 1]) - ALIKE;
        } else {
            score[PAIR][j] = Float.NEGATIVE_INFINITY;
        }
        if (i > 0) {
            // At the ends music may be left out without opening a gap: edits often fade in and out elsewhere.
            float open = j == 0 || j == now.length ? 0 : OPEN;
            leftOut = best(above[PAIR][j] - open, above[LEFT_OUT][j], above[PUT_IN][j] - open);
            score[LEFT_OUT][j] = above[leftOut][j] - (leftOut == LEFT_OUT ? 0 : open) - EXTEND;
        } else {
            score[LEFT_OUT][j] = Float.NEGATIVE_INFINITY;
        }
        if (j > 0) {
            float open = i == 0 || i == old.length ? 0 : OPEN;
            putIn = best(score[PAIR][j - 1] - open, score[LEFT_OUT][j - 1] - open, score[PUT_IN][j - 1]);
            score[PUT_IN][j] = score[putIn][j - 1] - (putIn == PUT_IN ? 0 : open) - EXTEND;
        } else {
            score[PUT_IN][j] = Float.NEGATIVE_INFINITY;
        }
        from[i][j] = (byte) (pair | leftOut << 2 | putIn << 4);
    }

    private static int best(float pair, float leftOut, float putIn) {
        return pair >= leftOut && pair >= putIn ? PAIR : leftOut >= putIn ? LEFT_OUT : PUT_IN;
    }

    private void trace(float[][] old, float[][] now, float[][] score, byte[][] from) {
        int i = old.length;
        int j = now.length;
        int state = best(score[PAIR][j], score[LEFT_OUT][j], score[PUT_IN][j]);
        List<int[]> pairs = new ArrayList<>();
        while (i > 0 || j > 0) {
            int before = from[i][j] >> 2 * state & 3;
            if (state == PAIR) {
                pairs.add(0, new int[] { --i, --j });
            } else if (state == LEFT_OUT) {
                i--;
            } else {
                j--;
            }
            state = before;
        }
        runs(pairs);
        double sum = 0;
        for (int[] pair : pairs) {
            sum += Math.max(0, dot(old[pair[0]], now[pair[1]]));
        }
        likeness = pairs.isEmpty() ? 0 : sum / pairs.size();
    }

    private void runs(List<int[]> pairs) {
        int from = 0;
        for (int p = 1; p <= pairs.size(); p++) {
            boolean gap = p < pairs.size() && (pairs.get(p)[0] - pairs.get(p - 1)[0] - 1 > DRIFT_STEPS
                    || pairs.get(p)[1] - pairs.get(p - 1)[1] - 1 > DRIFT_STEPS);
            if (p == pairs.size() || gap) {
                if (p - from >= SHORTEST_RUN) {
                    int[] a = pairs.get(from);
                    int[] b = pairs.get(p - 1);
                    runs.add(new Run(a[0] * stepUs, (b[0] + 1) * stepUs, (double) (a[1] - a[0]) * stepUs,
                            (double) (b[1] - b[0]) * stepUs));
                }
                from = p;
            }
        }
    }
}
