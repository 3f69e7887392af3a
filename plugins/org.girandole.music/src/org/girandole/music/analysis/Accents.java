package org.girandole.music.analysis;

/**
 * What happens at the places of a grid: rises of the spectrum in three bands and change of harmony, each as a multiple of what
 * is usual in the track.
 */
final class Accents {
    static final int KINDS = 4;
    static final int LOW = 0;
    static final int HARMONY = 3;
    private static final int EARLY = 2;
    private static final int LATE = 3;

    private final Features f;
    private final double[] usual;
    private final float[] harmony;

    Accents(Features f) {
        this.f = f;
        this.harmony = harmonyChange(f.chroma());
        this.usual = new double[] { mean(f.low()), mean(f.mid()), mean(f.high()), mean(harmony) };
    }

    /** One minus the cosine between the pitch classes of the 300 ms before and after. */
    private static float[] harmonyChange(float[][] chroma) {
        float[] change = new float[chroma.length];
        for (int i = 0; i < chroma.length; i++) {
            double both = 0;
            double before = 0;
            double after = 0;
            for (int c = 0; c < 12; c++) {
                double b = 0;
                double a = 0;
                for (int d = 1; d <= 3; d++) {
                    b += i >= d ? chroma[i - d][c] : 0;
                    a += i + d < chroma.length ? chroma[i + d][c] : 0;
                }
                both += a * b;
                before += b * b;
                after += a * a;
            }
            change[i] = before == 0 || after == 0 ? 0 : (float) (1 - both / Math.sqrt(before * after));
        }
        return change;
    }

    private static double mean(float[] values) {
        double sum = 0;
        for (float v : values) {
            sum += v;
        }
        return sum / Math.max(1, values.length) + 1e-6;
    }

    /** The accent at a place, 100 to the second; fractions allowed. */
    double[] at(double frame) {
        int n = (int) Math.round(frame);
        double slow = frame * Features.SLOW_RATE / Features.RATE;
        int s = (int) Math.round(slow);
        return new double[] { most(f.low(), n) / usual[0], most(f.mid(), n) / usual[1], most(f.high(), n) / usual[2],
            Math.max(value(s), Math.max(0.7 * value(s - 1), 0.7 * value(s + 1))) / usual[3] };
    }

    /** For each beat, how much the harmony from it to the next differs from that before it, as a multiple of the usual. */
    double[] harmonyBetween(double[] beats) {
        double[] change = new double[beats.length];
        double sum = 0;
        double[] before = null;
        for (int i = 0; i < beats.length; i++) {
            double end = i + 1 < beats.length ? beats[i + 1] : 2 * beats[i] - beats[Math.max(0, i - 1)];
            double[] here = pitchClasses(beats[i], end);
            change[i] = before == null ? 0 : 1 - cosine(before, here);
            sum += change[i];
            before = here;
        }
        double mean = sum / Math.max(1, beats.length - 1) + 1e-6;
        for (int i = 1; i < change.length; i++) {
            change[i] /= mean;
        }
        if (change.length > 0) {
            // Nothing is known before the first beat: that speaks neither for nor against it.
            change[0] = 1;
        }
        return change;
    }

    private double[] pitchClasses(double fromFrame, double toFrame) {
        double scale = (double) Features.SLOW_RATE / Features.RATE;
        int from = (int) Math.ceil(fromFrame * scale);
        int to = (int) Math.max(from + 1, Math.ceil(toFrame * scale));
        double[] sum = new double[12];
        for (int i = Math.max(0, from); i < Math.min(to, f.chroma().length); i++) {
            for (int c = 0; c < 12; c++) {
                sum[c] += f.chroma()[i][c];
            }
        }
        return sum;
    }

    private static double cosine(double[] a, double[] b) {
        double both = 0;
        double aa = 0;
        double bb = 0;
        for (int k = 0; k < a.length; k++) {
            both += a[k] * b[k];
            aa += a[k] * a[k];
            bb += b[k] * b[k];
        }
        return aa == 0 || bb == 0 ? 1 : both / Math.sqrt(aa * bb);
    }

    private double value(int slow) {
        return slow < 0 || slow >= harmony.length ? 0 : harmony[slow];
    }

    private static double most(float[] curve, int n) {
        double most = 0;
        for (int i = Math.max(0, n - EARLY); i <= Math.min(curve.length - 1, n + LATE); i++) {
            most = Math.max(most, curve[i]);
        }
        return most;
    }
}
