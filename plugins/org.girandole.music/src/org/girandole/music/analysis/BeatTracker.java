package org.girandole.music.analysis;

import java.util.Arrays;

/**
 * Finds the beat: the sequence of moments that best explains the rises of the spectrum as beats of a tempo that seldom
 * changes. The tempo changes at beats only and costs the more the farther it moves; the best sequence is found exactly, by
 * dynamic programming over (moment of a beat, length of the beat that begins there). The model is that of the efficient
 * state space of F. Krebs, S. Böck and G. Widmer, ISMIR 2015, written as a semi-Markov chain, with observed rises in place
 * of a trained network; the preference for walking tempi is that of D. Ellis, Beat tracking by dynamic programming, JNMR
 * 36(1), 2007. The constants were chosen on generated pieces other than those it is measured on.
 */
final class BeatTracker {
    /** Lengths of a beat in frames: 222 to 50 bpm. */
    private static final int SHORTEST = 27;
    private static final int LONGEST = 120;
    private static final int TEMPI = LONGEST - SHORTEST + 1;
    /** From one beat to the next its length changes by at most so many frames: a third of a beat at a march. */
    private static final int REACH = 20;
    /** Price of a tempo change, by the natural logarithm of the ratio. */
    private static final double CHANGE_PRICE = 60;
    /** What a rise must exceed to speak for a beat, in standard deviations. */
    private static final float NEEDED = 0.8f;
    /** Price of a tempo far from 100 bpm, by the square of octaves. */
    private static final double FAR_PRICE = 0.8;
    private static final double WALKING = 60;
    /** The same for a tempo far from that of the track, once it is known: quiet passages may not go at twice the tempo. */
    private static final double FAR_FROM_OWN_PRICE = 3;
    /** Rises are compared with what is usual within this time. */
    private static final int USUAL_REACH = 4 * Features.RATE;
    private static final float HIGHEST = 4;

    private BeatTracker() {
    }

    /**
     * Rises in standard deviations from the usual, the low ones counted once more, a little widened in time so that hands
     * need not be exact.
     */
    static float[] observation(Features f) {
        int n = f.size();
        float[] sum = new float[n];
        double low = mean(f.flux()) / Math.max(1e-6, mean(f.low()));
        for (int i = 0; i < n; i++) {
            sum[i] = (float) (f.flux()[i] + low * f.low()[i]);
        }
        float[] wide = new float[n];
        for (int i = 0; i < n; i++) {
            float near = Math.max(i >= 1 ? sum[i - 1] : 0, i + 1 < n ? sum[i + 1] : 0);
            float far = Math.max(i >= 2 ? sum[i - 2] : 0, i + 2 < n ? sum[i + 2] : 0);
            wide[i] = (float) Math.sqrt(Math.max(sum[i], Math.max(0.7f * near, 0.25f * far)));
        }
        return standardised(wide);
    }

    private static double mean(float[] values) {
        double sum = 0;
        for (float v : values) {
            sum += v;
        }
        return sum / Math.max(1, values.length);
    }

    private static float[] standardised(float[] x) {
        int n = x.length;
        double[] sum = new double[n + 1];
        double[] squares = new double[n + 1];
        for (int i = 0; i < n; i++) {
            sum[i + 1] = sum[i] + x[i];
            squares[i + 1] = squares[i] + (double) x[i] * x[i];
        }
        double whole = n == 0 ? 0 : Math.sqrt(Math.max(0, squares[n] / n - Math.pow(sum[n] / n, 2)));
        float[] z = new float[n];
        for (int i = 0; i < n; i++) {
            int a = Math.max(0, i - USUAL_REACH);
            int b = Math.min(n, i + USUAL_REACH);
            double mean = (sum[b] - sum[a]) / (b - a);
            double deviation = Math.sqrt(Math.max(0, (squares[b] - squares[a]) / (b - a) - mean * mean));
            // In silence nothing deviates; a part of the deviation of the whole track keeps its noise small.
            z[i] = (float) Math.min(HIGHEST, (x[i] - mean) / Math.max(1e-6, Math.max(deviation, 0.25 * whole)));
        }
        return z;
    }

    /** Frames of the beats, 100 to the second. */
    static int[] track(float[] observed) {
        return track(observed, farPrices(WALKING, FAR_PRICE));
    }

    /** The same, near a tempo that is known, {@code period} frames a beat. */
    static int[] trackNear(float[] observed, double period) {
        return track(observed, farPrices(period, FAR_FROM_OWN_PRICE));
    }

    private static int[] track(float[] observed, float[] far) {
        int n = observed.length;
        // Only the last LONGEST moments are looked back at; for every moment only where the best way came from is kept.
        float[][] score = new float[LONGEST + 1][TEMPI];
        byte[][] cameBy = new byte[n][TEMPI];
        float[][] change = changePrices();
        for (int t = 0; t < n; t++) {
            float[] here = score[t % score.length];
            float gain = observed[t] - NEEDED;
            for (int k = 0; k < TEMPI; k++) {
                // A beat of any tempo may be the first one, early on.
                float most = t < LONGEST ? 0 : Float.NEGATIVE_INFINITY;
                byte by = Byte.MIN_VALUE;
                int lowest = Math.max(0, k - REACH);
                int highest = Math.min(TEMPI - 1, Math.min(k + REACH, t - SHORTEST));
                for (int before = lowest; before <= highest; before++) {
                    float value = score[(t - SHORTEST - before) % score.length][before] + change[before][k - before + REACH];
                    if (value > most) {
                        most = value;
                        by = (byte) (before - k);
                    }
                }
                here[k] = most + gain - far[k];
                cameBy[t][k] = by;
            }
        }
        return wayBack(score, cameBy);
    }

    private static float[] farPrices(double usual, double price) {
        float[] far = new float[TEMPI];
        for (int k = 0; k < TEMPI; k++) {
            double octaves = Math.log((SHORTEST + k) / usual) / Math.log(2);
            far[k] = (float) (price * octaves * octaves);
        }
        return far;
    }

    private static float[][] changePrices() {
        float[][] change = new float[TEMPI][2 * REACH + 1];
        for (int k = 0; k < TEMPI; k++) {
            for (int d = -REACH; d <= REACH; d++) {
                double ratio = Math.max(1, SHORTEST + k + d) / (double) (SHORTEST + k);
                change[k][d + REACH] = (float) (-CHANGE_PRICE * Math.abs(Math.log(ratio)));
            }
        }
        return change;
    }

    private static int[] wayBack(float[][] score, byte[][] cameBy) {
        int n = cameBy.length;
        int t = -1;
        int k = -1;
        float most = Float.NEGATIVE_INFINITY;
        for (int end = Math.max(0, n - LONGEST); end < n; end++) {
            for (int tempo = 0; tempo < TEMPI; tempo++) {
                if (score[end % score.length][tempo] > most) {
                    most = score[end % score.length][tempo];
                    t = end;
                    k = tempo;
                }
            }
        }
        int[] frames = new int[n / SHORTEST + 2];
        int at = frames.length;
        while (t >= 0) {
            frames[--at] = t;
            if (cameBy[t][k] == Byte.MIN_VALUE) {
                break;
            }
            k += cameBy[t][k];
            t -= SHORTEST + k;
        }
        return Arrays.copyOfRange(frames, at, frames.length);
    }
}
