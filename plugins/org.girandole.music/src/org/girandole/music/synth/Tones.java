package org.girandole.music.synth;

import java.util.SplittableRandom;

/**
 * A voice of partials, each a sine that dies away by itself, under one envelope. A partial is carried on by the recurrence of a damped
 * oscillator: two multiplications a sample, which IEEE 754 makes come out the same everywhere.
 */
final class Tones implements Voice {
    /** Partials above this share of the sample rate would fold back. */
    private static final double HIGHEST = 0.45;
    /** Softer than the last of 16 bits. */
    private static final double UNHEARD = 1e-5;
    /** A partial is up to half of this louder or softer than its timbre says. */
    private static final double UNLIKE = 0.4;

    private final Timbre timbre;
    private final Partial[] partials;
    private final long releaseFrame;
    /** Partials from here on are not heard any more. */
    private int heard;
    private long frame;

    private static final class Partial {
        private final double keeps;
        private final double coefficient;
        private final double damping;
        private double size;
        private double last;
        private double before;

        Partial(double stepRad, double phaseRad, double keeps, double size) {
            this.keeps = keeps;
            this.size = size;
            coefficient = 2 * keeps * StrictMath.cos(stepRad);
            damping = keeps * keeps;
            last = size * StrictMath.sin(phaseRad);
            before = size * StrictMath.sin(phaseRad - stepRad) / keeps;
        }

        void addTo(double[] to, int count) {
            double now = last;
            double then = before;
            for (int i = 0; i < count; i++) {
                to[i] += now;
                double next = coefficient * now - damping * then;
                then = now;
                now = next;
            }
            last = now;
            before = then;
            size *= StrictMath.pow(keeps, count);
        }
    }

    /**
     * @param frequencyHz of the first partial
     * @param gain        loudness of the first partial, 1 being full scale
     * @param frames      until the key is let go
     * @param random      by which one note differs from the next
     */
    Tones(Timbre timbre, double frequencyHz, double gain, long frames, SplittableRandom random) {
        this.timbre = timbre;
        while (heard < timbre.partials().length && timbre.ratio(heard) * frequencyHz < HIGHEST * PieceRenderer.SAMPLE_RATE) {
            heard++;
        }
        partials = new Partial[heard];
        for (int i = 0; i < heard; i++) {
            double stepRad = 2 * StrictMath.PI * timbre.ratio(i) * frequencyHz / PieceRenderer.SAMPLE_RATE;
            double size = gain * timbre.partials()[i] * (1 + UNLIKE * (random.nextDouble() - 0.5));
            partials[i] = new Partial(stepRad, 2 * StrictMath.PI * random.nextDouble(), timbre.keepsPerFrame(i, frequencyHz), size);
        }
        releaseFrame = Math.max(frames, timbre.attackFrames());
    }

    @Override
    public boolean addTo(double[] to, int from) {
        long silentFrame = releaseFrame + timbre.releaseFrames();
        int count = (int) Math.min(to.length - from, silentFrame - frame);
        double[] sum = new double[count];
        for (int i = 0; i < heard; i++) {
            partials[i].addTo(sum, count);
        }
        while (heard > 0 && partials[heard - 1].size < UNHEARD) {
            heard--;
        }
        for (int i = 0; i < count; i++, frame++) {
            to[from + i] += frame >= timbre.attackFrames() && frame < releaseFrame ? sum[i] : sum[i] * envelope();
        }
        return frame < silentFrame && heard > 0;
    }

    private double envelope() {
        double rising = Math.min(1, (double) frame / timbre.attackFrames());
        double falling = frame < releaseFrame ? 1 : 1 - (double) (frame - releaseFrame) / timbre.releaseFrames();
        return rising * falling;
    }
}
