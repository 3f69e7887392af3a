package org.girandole.music.analysis;

import java.util.Arrays;

/**
 * Measures loudness: ITU-R BS.1770-4. Each channel goes through the two filters of annex 1 ("K-weighting"), its mean square
 * over blocks of 100 ms is kept, and four of those make a gating block of 400 ms with 75 % overlap. Blocks below -70 LUFS do
 * not count, nor do those more than 10 LU below the mean of the rest.
 *
 * <p>The standard gives the filters for 48 kHz only. At other rates they are the same analogue filters through the bilinear
 * transform: a high shelf of +3.9998 dB at 1681.97 Hz with Q 0.70718 and a high-pass at 38.135 Hz with Q 0.50033, which at
 * 48 kHz give the standard's coefficients.
 */
final class LoudnessMeter implements SampleSink {
    private static final double OFFSET_LU = -0.691;
    private static final double ABSOLUTE_GATE_LUFS = -70;
    private static final double RELATIVE_GATE_LU = -10;
    private static final double SURROUND_WEIGHT = 1.41;

    private final double[] weights;
    private final double[] filter;
    private final double[][] state;
    private final long rate;
    private double blockSum;
    private long frame;
    private long blockEnd;
    private long blockStart;
    private double[] power = new double[4096];
    private int blocks;

    LoudnessMeter(int sampleRate, int channels) {
        this.rate = sampleRate;
        this.weights = weights(channels);
        this.filter = coefficients(sampleRate);
        this.state = new double[channels][4];
        this.blockEnd = sampleRate / 10;
    }

    /** Channel order of WAV: front left and right, centre, low frequency (not counted), then surrounds. */
    private static double[] weights(int channels) {
        double[] weights = new double[channels];
        Arrays.fill(weights, 1);
        int firstSurround = channels == 4 ? 2 : channels == 5 ? 3 : 4;
        for (int c = firstSurround; c < channels; c++) {
            weights[c] = SURROUND_WEIGHT;
        }
        if (channels >= 6) {
            weights[3] = 0;
        }
        return weights;
    }

    /** b0 b1 b2 a1 a2 of the shelf, then a1 a2 of the high-pass, whose numerator is 1, -2, 1. */
    static double[] coefficients(double rate) {
        double k = Math.tan(Math.PI * 1681.974450955533 / rate);
        double q = 0.7071752369554196;
        double vh = Math.pow(10, 3.999843853973347 / 20);
        double vb = Math.pow(vh, 0.4996667741545416);
        double a0 = 1 + k / q + k * k;
        double k2 = Math.tan(Math.PI * 38.13547087602444 / rate);
        double q2 = 0.5003270373238773;
        double h0 = 1 + k2 / q2 + k2 * k2;
        return new double[] { (vh + vb * k / q + k * k) / a0, 2 * (k * k - vh) / a0, (vh - vb * k / q + k * k) / a0,
            2 * (k * k - 1) / a0, (1 - k / q + k * k) / a0, 2 * (k2 * k2 - 1) / h0, (1 - k2 / q2 + k2 * k2) / h0 };
    }

    @Override
    public void take(float[][] channels, int count) {
        int at = 0;
        while (at < count) {
            int n = (int) Math.min(count - at, blockEnd - frame);
            for (int c = 0; c < channels.length; c++) {
                if (weights[c] > 0) {
                    blockSum += weights[c] * energy(channels[c], at, at + n, state[c]);
                }
            }
            at += n;
            frame += n;
            if (frame == blockEnd) {
                endBlock();
            }
        }
    }

    private double energy(float[] x, int from, int to, double[] s) {
        double b0 = filter[0];
        double b1 = filter[1];
        double b2 = filter[2];
        double a1 = filter[3];
        double a2 = filter[4];
        double c1 = filter[5];
        double c2 = filter[6];
        double s0 = s[0];
        double s1 = s[1];
        double s2 = s[2];
        double s3 = s[3];
        double sum = 0;
        for (int i = from; i < to; i++) {
            double in = x[i];
            double y = b0 * in + s0;
            s0 = b1 * in - a1 * y + s1;
            s1 = b2 * in - a2 * y;
            double z = y + s2;
            s2 = -2 * y - c1 * z + s3;
            s3 = y - c2 * z;
            sum += z * z;
        }
        s[0] = quiet(s0);
        s[1] = quiet(s1);
        s[2] = quiet(s2);
        s[3] = quiet(s3);
        return sum;
    }

    /** Numbers too small for the normal range make some processors very slow. */
    private static double quiet(double value) {
        return Math.abs(value) < 1e-30 ? 0 : value;
    }

    private void endBlock() {
        if (blocks == power.length) {
            power = Arrays.copyOf(power, 2 * blocks);
        }
        power[blocks++] = blockSum / (blockEnd - blockStart);
        blockSum = 0;
        blockStart = blockEnd;
        // Blocks of 100 ms also where the rate is no multiple of ten.
        blockEnd = rate * (blocks + 1) / 10;
    }

    Loudness loudness() {
        double[] gating = new double[Math.max(0, blocks - 3)];
        for (int i = 0; i < gating.length; i++) {
            gating[i] = (power[i] + power[i + 1] + power[i + 2] + power[i + 3]) / 4;
        }
        return new Loudness(integrated(gating), curve(30), curve(4));
    }

    private static double integrated(double[] gating) {
        double absolute = meanAbove(gating, power(ABSOLUTE_GATE_LUFS));
        if (Double.isNaN(absolute)) {
            return Double.NEGATIVE_INFINITY;
        }
        double threshold = Math.max(power(ABSOLUTE_GATE_LUFS), absolute * Math.pow(10, RELATIVE_GATE_LU / 10));
        return lufs(meanAbove(gating, threshold));
    }

    private static double meanAbove(double[] values, double threshold) {
        return Arrays.stream(values).filter(v -> v > threshold).average().orElse(Double.NaN);
    }

    private float[] curve(int length) {
        float[] curve = new float[blocks];
        for (int i = 0; i < blocks; i++) {
            double sum = 0;
            for (int j = Math.max(0, i - length + 1); j <= i; j++) {
                sum += power[j];
            }
            curve[i] = (float) lufs(sum / length);
        }
        return curve;
    }

    private static double lufs(double meanSquare) {
        return meanSquare <= 0 ? Double.NEGATIVE_INFINITY : OFFSET_LU + 10 * Math.log10(meanSquare);
    }

    private static double power(double lufs) {
        return Math.pow(10, (lufs - OFFSET_LU) / 10);
    }
}
