package org.girandole.music.synth;

import java.util.HashMap;
import java.util.Map;
import java.util.SplittableRandom;

/** Strokes of percussion, by the keys of the General MIDI percussion map. */
final class Percussion {
    private static final int RATE = PieceRenderer.SAMPLE_RATE;
    private static final double TAU = 2 * StrictMath.PI;
    private static final double THOUSANDTH = 1e-3;
    private static final double ATTACK_FRAMES = 22;

    private final Map<Integer, Instrument> instruments = new HashMap<>();

    /**
     * What is struck.
     *
     * @param tone  of its skin or body; as long as the whole sound
     * @param noise share of noise, 0 to 1
     * @param sharp how often differences of the noise are taken: each makes it brighter
     */
    private record Instrument(double[] tone, double noise, int sharp) {
    }

    /** @param random where the noise comes from: no two strokes of a player are alike */
    Voice stroke(int key, double gain, SplittableRandom random) {
        return new Stroke(instruments.computeIfAbsent(key, Percussion::instrument), gain, random);
    }

    private static Instrument instrument(int key) {
        return switch (key) {
            case 35, 36 -> drum(0.35, 52, 110, 0.05, 0.02);
            case 38, 40 -> drum(0.25, 185, 60, 0.03, 0.7);
            case 39 -> metal(0.12, 1);
            case 41, 43, 45, 47, 48, 50 -> drum(0.4, 80 + 9 * (key - 41), 60, 0.06, 0.05);
            case 42, 44 -> metal(0.06, 2);
            case 46 -> metal(0.3, 2);
            case 49, 52, 55, 57 -> metal(1.6, 2);
            case 51, 53, 59 -> metal(0.7, 2);
            case 54, 69, 70, 82 -> metal(0.08, 2);
            case 60, 61, 62, 63, 64, 65, 66 -> drum(0.2, 330 - 25 * (key - 60), 20, 0.03, 0.03);
            default -> drum(0.06, 900 + 60 * (key % 16), 0, 0.01, 0.1);
        };
    }

    /** A skin whose tone falls by {@code fallHz} within some {@code fallS}, with a share of the rattle of a snare. */
    private static Instrument drum(double lengthS, double frequencyHz, double fallHz, double fallS, double rattle) {
        double[] tone = new double[(int) (lengthS * RATE)];
        double phase = 0;
        for (int i = 0; i < tone.length; i++) {
            tone[i] = StrictMath.sin(phase);
            phase += TAU * (frequencyHz + fallHz * StrictMath.exp(-i / (fallS * RATE))) / RATE;
        }
        return new Instrument(tone, rattle, 1);
    }

    private static Instrument metal(double lengthS, int sharp) {
        return new Instrument(new double[(int) (lengthS * RATE)], 1, sharp);
    }

    private static final class Stroke implements Voice {
        private final Instrument instrument;
        private final SplittableRandom random;
        private final double keeps;
        private final double[] held;
        private double gain;
        private int next;

        Stroke(Instrument instrument, double gain, SplittableRandom random) {
            this.instrument = instrument;
            this.gain = gain;
            this.random = random;
            keeps = StrictMath.pow(THOUSANDTH, 1.0 / instrument.tone.length);
            held = new double[instrument.sharp];
        }

        @Override
        public boolean addTo(double[] to, int from) {
            int count = Math.min(to.length - from, instrument.tone.length - next);
            for (int i = 0; i < count; i++, next++) {
                double sound = (1 - instrument.noise) * instrument.tone[next] + instrument.noise * noise();
                to[from + i] += gain * sound * Math.min(1, next / ATTACK_FRAMES);
                gain *= keeps;
            }
            return next < instrument.tone.length;
        }

        private double noise() {
            double value = random.nextDouble() - 0.5;
            for (int i = 0; i < held.length; i++) {
                double was = held[i];
                held[i] = value;
                value = (value - was) * 0.75;
            }
            return value;
        }
    }
}
