package org.girandole.music.analysis;

/**
 * Finds bars in a sequence of beats: the bar length and the places of first beats that gather the most of what first beats
 * have, changes of harmony and low notes above all. The length is that for which the accents of first beats stand out most
 * clearly from the rest (a t statistic); then the first beats are placed by dynamic programming, which lets the count start
 * anew where the music clearly does, at a price. Weights and prices are our own, chosen on generated pieces.
 */
final class BarFinder {
    private static final double[] WEIGHTS = { 0.7, 0.3, 0.3, 1.5 };
    private static final int[] LENGTHS = { 4, 3, 2, 5, 6, 7 };
    /** Four in a bar is the rule, three common; the others must be heard clearly. */
    private static final double[] HEAD_START = { 1.0, 0.7, 0.2, 0.2, 0, 0 };
    private static final int FEWEST_BARS = 3;
    private static final double ANEW_PRICE = 8;

    /**
     * @param beatsPerBar 0 where there are too few beats
     * @param inBar       for each beat its place from 1
     * @param confidence  0 to 1
     */
    record Bars(int beatsPerBar, int[] inBar, double confidence) {
    }

    private BarFinder() {
    }

    static Bars find(double[] beats, Accents accents) {
        double[] likeFirst = likeFirst(beats, accents);
        int best = 0;
        int bestPhase = 0;
        double most = Double.NEGATIVE_INFINITY;
        double second = Double.NEGATIVE_INFINITY;
        for (int i = 0; i < LENGTHS.length; i++) {
            int length = LENGTHS[i];
            for (int phase = 0; phase < length && beats.length >= FEWEST_BARS * length; phase++) {
                double clear = clearness(likeFirst, length, phase) + HEAD_START[i];
                if (clear > most) {
                    second = most;
                    most = clear;
                    best = length;
                    bestPhase = phase;
                } else {
                    second = Math.max(second, clear);
                }
            }
        }
        if (best == 0) {
            return new Bars(0, new int[beats.length], 0);
        }
        // A bar that begins on another beat may be as clear as the true one: never more than four fifths sure.
        double confidence = 0.8 * Math.max(0, Math.min(1, (most - second) / 4)) * Math.max(0, Math.min(1, most / 6));
        return new Bars(best, place(likeFirst, best, bestPhase), confidence);
    }

    /** For each beat, how much it has of what first beats have, in standard deviations. */
    private static double[] likeFirst(double[] beats, Accents accents) {
        double[][] kinds = new double[WEIGHTS.length][beats.length];
        double[] harmony = accents.harmonyBetween(beats);
        for (int i = 0; i < beats.length; i++) {
            double[] accent = accents.at(beats[i]);
            accent[Accents.HARMONY] = harmony[i];
            for (int k = 0; k < WEIGHTS.length; k++) {
                kinds[k][i] = Math.sqrt(accent[k]);
            }
        }
        double[] sum = new double[beats.length];
        for (int k = 0; k < WEIGHTS.length; k++) {
            standardise(kinds[k]);
            for (int i = 0; i < sum.length; i++) {
                sum[i] += WEIGHTS[k] * kinds[k][i];
            }
        }
        standardise(sum);
        return sum;
    }

    private static void standardise(double[] values) {
        double mean = 0;
        double squares = 0;
        for (double v : values) {
            mean += v / values.length;
            squares += v * v / values.length;
        }
        double deviation = Math.sqrt(Math.max(1e-9, squares - mean * mean));
        for (int i = 0; i < values.length; i++) {
            values[i] = (values[i] - mean) / deviation;
        }
    }

    private static double clearness(double[] likeFirst, int length, int phase) {
        double sum = 0;
        int count = 0;
        for (int i = phase; i < likeFirst.length; i += length) {
            sum += likeFirst[i];
            count++;
        }
        return sum / count * Math.sqrt(count);
    }

    /** Best placing of the first beats, the count starting at {@code phase} but free to start anew. */
    private static int[] place(double[] likeFirst, int length, int phase) {
        int n = likeFirst.length;
        double[][] score = new double[n][length];
        int[][] from = new int[n][length];
        for (int i = 0; i < n; i++) {
            for (int p = 0; p < length; p++) {
                double gain = p == 0 ? likeFirst[i] : -likeFirst[i] / (length - 1);
                if (i == 0) {
                    score[0][p] = gain - (p == Math.floorMod(-phase, length) ? 0 : ANEW_PRICE);
                    continue;
                }
                int usual = Math.floorMod(p - 1, length);
                from[i][p] = usual;
                double most = score[i - 1][usual];
                for (int q = 0; p == 0 && q < length; q++) {
                    if (score[i - 1][q] - ANEW_PRICE > most) {
                        most = score[i - 1][q] - ANEW_PRICE;
                        from[i][p] = q;
                    }
                }
                score[i][p] = most + gain;
            }
        }
        int at = 0;
        for (int p = 1; p < length; p++) {
            if (score[n - 1][p] > score[n - 1][at]) {
                at = p;
            }
        }
        int[] inBar = new int[n];
        for (int i = n - 1; i >= 0; i--) {
            inBar[i] = at + 1;
            at = from[i][at];
        }
        return inBar;
    }
}
