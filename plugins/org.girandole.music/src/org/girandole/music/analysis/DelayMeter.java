package org.girandole.music.analysis;

import java.util.ArrayList;
import java.util.List;

/** Measures the delay between two tracks every second or so, by cross-correlating four seconds of their attacks at 1 ms. */
final class DelayMeter {
    private static final int WINDOW_MS = 4000;
    private static final int HOP_MS = 1000;
    private static final double LEAST_CORRELATION = 0.3;
    /** The rough alignment may be off by two of its steps. */
    private static final int SEARCH_STEPS_MS = 250;

    private final float[] old;
    private final float[] now;

    /** A delay at a moment of the old track, measured from one moment to another. */
    record Delay(long atUs, long fromUs, long toUs, double delayUs) {
    }

    DelayMeter(float[] oldAttack, float[] newAttack) {
        this.old = compressed(oldAttack);
        this.now = compressed(newAttack);
    }

    /** Logarithms, so that quiet strokes count too; smoothed over 3 ms, so that a shift of half a millisecond does not matter. */
    private static float[] compressed(float[] attack) {
        double mean = 0;
        for (float v : attack) {
            mean += v / Math.max(1, attack.length);
        }
        float[] log = new float[attack.length];
        for (int i = 0; i < log.length; i++) {
            log[i] = (float) Math.log1p(20 * attack[i] / (mean + 1e-9));
        }
        float[] smooth = new float[log.length];
        for (int i = 0; i < log.length; i++) {
            smooth[i] = (log[Math.max(0, i - 1)] + 2 * log[i] + log[Math.min(log.length - 1, i + 1)]) / 4;
        }
        return smooth;
    }

    List<Delay> delays(RoughAlignment.Run run) {
        List<Delay> delays = new ArrayList<>();
        int from = (int) (run.oldFromUs() / 1000);
        int to = (int) Math.min(old.length, run.oldToUs() / 1000);
        int length = Math.min(WINDOW_MS, to - from);
        for (int start = from; start + length <= to; start += HOP_MS) {
            double share = (double) (start - from) / Math.max(1, to - from);
            int about = (int) Math.round((run.delayFromUs() + share * (run.delayToUs() - run.delayFromUs())) / 1000);
            double delay = delay(start, length, about);
            if (!Double.isNaN(delay)) {
                delays.add(new Delay((start + length / 2) * 1000L, start * 1000L, (start + length) * 1000L, delay * 1000));
            }
        }
        return delays;
    }

    /** In milliseconds, to a fraction by the parabola through the best three; NaN if nothing is alike. */
    private double delay(int start, int length, int about) {
        double[] correlation = new double[2 * SEARCH_STEPS_MS + 1];
        int best = 0;
        for (int d = 0; d < correlation.length; d++) {
            correlation[d] = correlation(start, length, start + about + d - SEARCH_STEPS_MS);
            if (correlation[d] > correlation[best]) {
                best = d;
            }
        }
        if (correlation[best] < LEAST_CORRELATION) {
            return Double.NaN;
        }
        double fraction = 0;
        if (best > 0 && best + 1 < correlation.length) {
            double bend = correlation[best - 1] - 2 * correlation[best] + correlation[best + 1];
            fraction = bend < 0 ? (correlation[best - 1] - correlation[best + 1]) / (2 * bend) : 0;
        }
        return about + best - SEARCH_STEPS_MS + fraction;
    }

    private double correlation(int start, int length, int newStart) {
        if (newStart < 0 || newStart + length > now.length) {
            return 0;
        }
        double ab = 0;
        double aa = 0;
        double bb = 0;
        double sa = 0;
        double sb = 0;
        for (int i = 0; i < length; i++) {
            double a = old[start + i];
            double b = now[newStart + i];
            ab += a * b;
            aa += a * a;
            bb += b * b;
            sa += a;
            sb += b;
        }
        double va = aa - sa * sa / length;
        double vb = bb - sb * sb / length;
        return va <= 1e-9 || vb <= 1e-9 ? 0 : (ab - sa * sb / length) / Math.sqrt(va * vb);
    }
}
