package org.girandole.benchmarks.music;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.girandole.music.Meter;
import org.girandole.music.RampLaw;
import org.girandole.music.Rational;
import org.girandole.music.TempoMap;
import org.girandole.music.synth.Piece;
import org.girandole.music.synth.PieceWriter;

/**
 * Pieces made up from a seed, in many tempi, meters and textures, with everything about them known: the measure for the
 * finders. Nothing in them is from elsewhere; chords, tunes and patterns are drawn by lot within what each texture allows.
 */
public final class GeneratedPieces {
    private static final int KICK = 36;
    private static final int STICK = 37;
    private static final int SNARE = 38;
    private static final int CLAP = 39;
    private static final int HAT = 42;
    private static final int OPEN_HAT = 46;
    private static final int CRASH = 49;
    private static final int RIDE = 51;
    private static final int LOW_CONGA = 64;
    private static final int HIGH_CONGA = 62;
    private static final int CLAVES = 75;

    /**
     * A piece with what a listener should find.
     *
     * @param texture       its kind
     * @param piece         the piece
     * @param changing      whether its tempo changes
     * @param beatsUs       the beats a listener taps: dotted quarters in 6/8
     * @param downbeatsUs   the first beats of bars
     * @param onsetsUs      the moments where at least one note begins
     * @param tappedInBar   taps in a bar
     */
    public record Known(String texture, Piece piece, boolean changing, long[] beatsUs, long[] downbeatsUs, long[] onsetsUs,
            int tappedInBar) {
    }

    private enum Texture {
        ROCK(4, 4, 90, 165), DANCE(4, 4, 110, 140), WALTZ(3, 4, 90, 180), MARCH(4, 4, 96, 126), BALLAD(4, 4, 60, 92),
        ORCHESTRAL(4, 4, 80, 150), FUNK(4, 4, 84, 116), JIG(6, 8, 240, 390), FIVE(5, 4, 100, 170), LATIN(4, 4, 90, 130),
        MUSIC_BOX(3, 4, 70, 110), SLOW_HEAVY(4, 4, 66, 88), SEVEN(7, 4, 110, 160), CHOIR_AND_DRUM(4, 4, 70, 110);

        private final Meter meter;
        private final int slowest;
        private final int fastest;

        Texture(int beats, int unit, int slowest, int fastest) {
            this.meter = new Meter(beats, unit);
            this.slowest = slowest;
            this.fastest = fastest;
        }
    }

    private final Random random;
    private final Texture texture;
    private final PieceWriter out;
    private final int bars;
    private final int key;
    private final int[] roots;
    private final boolean[] minor;
    private final boolean human;

    private GeneratedPieces(long seed, Texture texture, boolean changing, int number) {
        this.random = new Random(seed);
        this.texture = texture;
        this.human = random.nextInt(3) == 0;
        double bpm = texture.slowest + random.nextDouble() * (texture.fastest - texture.slowest);
        // About fifty seconds of music.
        this.bars = Math.max(16, (int) Math.round(50 * bpm / 60 / texture.meter.beatsPerBar()));
        this.key = 45 + random.nextInt(12);
        int[][] rounds = { { 0, 9, 5, 7 }, { 0, 5, 7, 0 }, { 9, 5, 0, 7 }, { 0, 7, 9, 5 }, { 2, 7, 0, 9 } };
        this.roots = rounds[random.nextInt(rounds.length)];
        this.minor = new boolean[] { false, false, true, false, true, false, false, false, false, true, false, true };
        String name = texture.name().toLowerCase(java.util.Locale.ROOT) + "-" + number + (changing ? "-changing" : "");
        this.out = new PieceWriter(name, tempo(bpm, changing), bars);
    }

    /** {@code count} pieces; the same for the same seed. Every fourth changes its tempo. */
    public static List<Known> set(long seed, int count) {
        List<Known> pieces = new ArrayList<>();
        Random seeds = new Random(seed);
        for (int i = 0; i < count; i++) {
            Texture texture = Texture.values()[i % Texture.values().length];
            pieces.add(new GeneratedPieces(seeds.nextLong(), texture, i % 4 == 3, i).compose());
        }
        return pieces;
    }

    private TempoMap tempo(double bpm, boolean changing) {
        long start = 200_000 + random.nextInt(1_500_000);
        Rational first = Rational.of(Math.round(bpm * 100), 100);
        TempoMap.Builder map = TempoMap.startingAt(start, first, texture.meter);
        if (changing) {
            double other = bpm * (random.nextBoolean() ? 1.12 + random.nextDouble() * 0.15 : 0.78 + random.nextDouble() * 0.12);
            Rational second = Rational.of(Math.round(other * 100), 100);
            int at = bars / 3;
            switch (random.nextInt(3)) {
                case 0 -> map.tempo(at, second).tempo(2 * at, first);
                case 1 -> map.ramp(at, second, 2 * at);
                default -> map.ramp(at, second, at + 8, RampLaw.LINEAR_IN_TIME).tempo(2 * at + 4, first);
            }
        }
        return map.build();
    }

    private Known compose() {
        for (int bar = 1; bar <= bars; bar++) {
            switch (texture) {
                case ROCK -> rock(bar);
                case DANCE -> dance(bar);
                case WALTZ -> waltz(bar);
                case MARCH -> march(bar);
                case BALLAD -> ballad(bar);
                case ORCHESTRAL -> orchestral(bar);
                case FUNK -> funk(bar);
                case JIG -> jig(bar);
                case FIVE -> five(bar);
                case LATIN -> latin(bar);
                case MUSIC_BOX -> musicBox(bar);
                case SLOW_HEAVY -> slowHeavy(bar);
                case SEVEN -> seven(bar);
                case CHOIR_AND_DRUM -> choirAndDrum(bar);
            }
        }
        return known(out.piece());
    }

    private Known known(Piece piece) {
        TempoMap map = piece.map();
        int step = texture == Texture.JIG ? 3 : 1;
        List<Long> beats = new ArrayList<>();
        List<Long> downbeats = new ArrayList<>();
        for (int bar = 1; bar <= bars; bar++) {
            downbeats.add(map.timeUsOfBar(bar, Rational.ONE));
            for (int beat = 1; beat <= texture.meter.beatsPerBar(); beat += step) {
                beats.add(map.timeUsOfBar(bar, Rational.of(beat)));
            }
        }
        List<Long> onsets = new ArrayList<>();
        for (Piece.Note note : piece.notes()) {
            if (onsets.isEmpty() || note.timeUs() - onsets.get(onsets.size() - 1) > 30_000) {
                onsets.add(note.timeUs());
            }
        }
        return new Known(piece.name(), piece, piece.map().events().size() > 1, array(beats), array(downbeats), array(onsets),
                texture.meter.beatsPerBar() / step);
    }

    private static long[] array(List<Long> values) {
        return values.stream().mapToLong(Long::longValue).toArray();
    }

    private void note(int channel, int bar, double beat, double beats, int pitch, int velocity) {
        // A person plays up to 8 ms off the grid (never before the first beat of the piece).
        double late = human && (bar > 1 || beat > 1.5) ? random.nextGaussian() * 0.004 / secondsPerBeat(bar) : 0;
        double most = texture.meter.beatsPerBar() + 0.999;
        double at = Math.min(most, Math.max(1, beat + late));
        int loud = Math.max(20, Math.min(127, velocity + random.nextInt(9) - 4));
        out.note(channel, bar, Rational.of(Math.round(at * 1000), 1000), Rational.of(Math.round(beats * 1000), 1000),
                Math.max(12, Math.min(115, pitch)), loud);
    }

    private double secondsPerBeat(int bar) {
        return 60 / out.map().bpmAt(out.map().timeUsOfBar(bar, Rational.ONE)).toDouble();
    }

    private void hit(int bar, double beat, int drum, int velocity) {
        note(PieceWriter.PERCUSSION, bar, beat, 0.2, drum, velocity);
    }

    private int root(int bar) {
        return key + roots[(bar - 1) % roots.length] - (roots[(bar - 1) % roots.length] > 7 ? 12 : 0);
    }

    private int[] chord(int bar) {
        int third = minor[roots[(bar - 1) % roots.length]] ? 3 : 4;
        return new int[] { root(bar) + 12, root(bar) + 12 + third, root(bar) + 19 };
    }

    private void chord(int channel, int bar, double beat, double beats, int velocity) {
        for (int pitch : chord(bar)) {
            note(channel, bar, beat, beats, pitch, velocity);
        }
    }

    /** A tune in the chord and its neighbours, drawn in steps of {@code grid} beats with rests and longer notes. */
    private void tune(int channel, int bar, double grid, double density, int velocity) {
        double end = texture.meter.beatsPerBar() + 1;
        for (double beat = 1; beat < end - 1e-9; beat += grid) {
            boolean strong = Math.abs(beat - Math.rint(beat)) < 1e-9;
            if (random.nextDouble() < density * (strong ? 1.15 : 0.7)) {
                double length = Math.min(end - beat, grid * (1 + random.nextInt(2)));
                note(channel, bar, beat, length * 0.95, chord(bar)[random.nextInt(3)] + 12 + (random.nextInt(4) == 0 ? 2 : 0), velocity);
            }
        }
    }

    private void instruments(int... programs) {
        for (int i = 0; i < programs.length; i++) {
            out.instrument(i, programs[i], 100);
        }
    }

    private void rock(int bar) {
        if (bar == 1) {
            instruments(30, 33, 29, 0);
        }
        if ((bar - 1) % 8 == 0) {
            hit(bar, 1, CRASH, 105);
        }
        hit(bar, 1, KICK, 115);
        hit(bar, 3, KICK, 110);
        if (bar % 2 == 0) {
            hit(bar, 3.5, KICK, 100);
        }
        hit(bar, 2, SNARE, 112);
        hit(bar, 4, SNARE, 114);
        for (double b = 1; b < 5; b += 0.5) {
            hit(bar, b, HAT, b == Math.rint(b) ? 80 : 62);
            note(1, bar, b, 0.45, root(bar) - 12, b == 1 ? 105 : 90);
        }
        chord(0, bar, 1, 1.9, 85);
        chord(0, bar, 3, 1.4, 80);
        tune(2, bar, 0.5, 0.5, 85);
    }

    private void dance(int bar) {
        if (bar == 1) {
            instruments(81, 38, 89, 87);
        }
        for (int b = 1; b <= 4; b++) {
            hit(bar, b, KICK, 118);
            hit(bar, b + 0.5, OPEN_HAT, 82);
            note(1, bar, b + 0.5, 0.45, root(bar) - 12, 98);
        }
        hit(bar, 2, CLAP, 95);
        hit(bar, 4, CLAP, 95);
        chord(2, bar, 1, 4, 60);
        if (bar > 8) {
            for (int i = 0; i < 16; i++) {
                note(0, bar, 1 + i / 4.0, 0.2, chord(bar)[i % 3] + 12, 70 + (i % 4 == 0 ? 15 : 0));
            }
        }
    }

    private void waltz(int bar) {
        if (bar == 1) {
            instruments(0, 0, 48);
        }
        note(0, bar, 1, 0.9, root(bar) - 12, 98);
        chord(0, bar, 2, 0.7, 70);
        chord(0, bar, 3, 0.7, 68);
        tune(1, bar, bar % 4 == 0 ? 1 : 0.5, 0.6, 88);
        if (bar > 16) {
            chord(2, bar, 1, 3, 60);
        }
    }

    private void march(int bar) {
        if (bar == 1) {
            instruments(61, 58, 72);
        }
        for (int b = 1; b <= 4; b++) {
            hit(bar, b, b % 2 == 1 ? KICK : SNARE, b == 1 ? 112 : 96);
            note(1, bar, b, 0.4, root(bar) - 12 + (b == 3 ? 7 : 0), 95);
        }
        for (double b = 1.5; b < 5; b++) {
            chord(0, bar, b, 0.35, 72);
        }
        hit(bar, 4.5, SNARE, 80);
        hit(bar, 4.75, SNARE, 80);
        tune(2, bar, 0.5, 0.6, 95);
    }

    private void ballad(int bar) {
        if (bar == 1) {
            instruments(0, 48, 73);
        }
        for (int i = 0; i < 8; i++) {
            int pitch = i == 0 ? root(bar) : chord(bar)[(i * 2) % 3];
            note(0, bar, 1 + i / 2.0, 0.5, pitch, i == 0 ? 90 : i % 2 == 0 ? 76 : 66);
        }
        chord(1, bar, 1, 4, 55);
        tune(2, bar, 1, 0.6, 80);
    }

    private void orchestral(int bar) {
        if (bar == 1) {
            instruments(45, 47, 61, 48);
        }
        for (int i = 0; i < 8; i++) {
            note(0, bar, 1 + i / 2.0, 0.3, chord(bar)[i % 2], i % 8 == 0 ? 105 : i % 2 == 0 ? 90 : 76);
        }
        note(1, bar, 1, 1, root(bar) - 12, 110);
        if (bar % 2 == 0) {
            note(1, bar, 3, 0.5, root(bar) - 12, 92);
            note(1, bar, 4, 0.5, root(bar) - 12, 98);
        }
        if (bar > 8) {
            chord(2, bar, 1, 2, 92);
            tune(2, bar, 1, 0.5, 92);
        }
        chord(3, bar, 1, 4, 66);
    }

    private void funk(int bar) {
        if (bar == 1) {
            instruments(27, 36, 62);
        }
        double[] kicks = { 1, 1.75, 2.5, 3.75 };
        for (double b : kicks) {
            hit(bar, b, KICK, b == 1 ? 116 : 98);
            note(1, bar, b, 0.3, root(bar) - 12 + (b > 3 ? 12 : 0), b == 1 ? 112 : 96);
        }
        hit(bar, 2, SNARE, 114);
        hit(bar, 4, SNARE, 114);
        for (int i = 0; i < 16; i++) {
            hit(bar, 1 + i / 4.0, HAT, i % 4 == 0 ? 84 : i % 2 == 0 ? 66 : 50);
        }
        chord(0, bar, 2.25, 0.2, 78);
        chord(0, bar, 3.5, 0.2, 74);
        if (bar % 4 == 0) {
            chord(2, bar, 4, 0.5, 92);
        }
    }

    private void jig(int bar) {
        if (bar == 1) {
            instruments(40, 21, 32);
        }
        hit(bar, 1, KICK, 105);
        hit(bar, 4, SNARE, 88);
        for (int b = 1; b <= 6; b++) {
            hit(bar, b, HAT, b % 3 == 1 ? 78 : 56);
        }
        note(2, bar, 1, 2.8, root(bar) - 12, 98);
        note(2, bar, 4, 2.8, root(bar) - 5, 90);
        chord(1, bar, 1, 2.8, 64);
        chord(1, bar, 4, 2.8, 60);
        tune(0, bar, 1, 0.75, 90);
    }

    private void five(int bar) {
        if (bar == 1) {
            instruments(0, 33, 65);
        }
        hit(bar, 1, KICK, 112);
        hit(bar, 4, KICK, 104);
        hit(bar, 3, SNARE, 92);
        hit(bar, 5, SNARE, 94);
        for (int b = 1; b <= 5; b++) {
            hit(bar, b, RIDE, 78);
            hit(bar, b + 0.5, RIDE, 52);
        }
        note(1, bar, 1, 2.5, root(bar) - 12, 104);
        note(1, bar, 4, 1.5, root(bar) - 5, 98);
        chord(0, bar, 1, 1, 86);
        chord(0, bar, 2.5, 0.5, 70);
        chord(0, bar, 4, 1.5, 82);
        tune(2, bar, 0.5, 0.35, 84);
    }

    private void latin(int bar) {
        if (bar == 1) {
            instruments(0, 32, 56);
        }
        double[] clave = bar % 2 == 1 ? new double[] { 1, 2.5, 4 } : new double[] { 2, 3 };
        for (double b : clave) {
            hit(bar, b, CLAVES, 92);
        }
        for (double b = 1; b < 5; b += 0.5) {
            hit(bar, b, b == 4 || b == 4.5 ? LOW_CONGA : HIGH_CONGA, b == 1 || b == 4 ? 96 : 70);
        }
        hit(bar, 1, KICK, 100);
        hit(bar, 3, KICK, 90);
        note(1, bar, 1, 1.4, root(bar) - 12, 104);
        note(1, bar, 2.5, 1.4, root(bar) - 5, 94);
        note(1, bar, 4, 1, root(bar) - 5, 92);
        chord(0, bar, 1, 0.4, 82);
        chord(0, bar, 2.5, 0.4, 74);
        chord(0, bar, 3.5, 0.4, 74);
        tune(2, bar, 0.5, 0.3, 86);
    }

    private void musicBox(int bar) {
        if (bar == 1) {
            instruments(10, 46, 8);
        }
        note(1, bar, 1, 3, root(bar), 96);
        note(0, bar, 1, 1, chord(bar)[0] + 24, 96);
        for (int b = 2; b <= 3; b++) {
            note(1, bar, b, 1, chord(bar)[b - 1], 76);
        }
        tune(0, bar, 0.5, 0.55, 84);
    }

    private void slowHeavy(int bar) {
        if (bar == 1) {
            instruments(30, 34, 29);
        }
        hit(bar, 1, KICK, 120);
        hit(bar, 2.5, KICK, 104);
        hit(bar, 3, SNARE, 120);
        if (bar % 4 == 1) {
            hit(bar, 1, CRASH, 112);
        }
        for (int b = 1; b <= 4; b++) {
            hit(bar, b, OPEN_HAT, 88);
        }
        chord(0, bar, 1, 1.4, 96);
        chord(0, bar, 2.5, 1.4, 90);
        chord(0, bar, 4, 0.9, 88);
        note(1, bar, 1, 1.4, root(bar) - 12, 108);
        note(1, bar, 2.5, 1.4, root(bar) - 12, 100);
        note(1, bar, 4, 0.9, root(bar) - 12, 98);
    }

    private void seven(int bar) {
        if (bar == 1) {
            instruments(26, 33, 80);
        }
        int[] strong = { 1, 3, 5 };
        for (int b : strong) {
            hit(bar, b, b == 3 ? SNARE : KICK, b == 1 ? 114 : 100);
            note(1, bar, b, b == 5 ? 2.8 : 1.8, root(bar) - 12 + (b == 5 ? 7 : 0), b == 1 ? 108 : 94);
            chord(0, bar, b, 0.8, b == 1 ? 86 : 74);
        }
        for (int b = 1; b <= 7; b++) {
            hit(bar, b, HAT, b == 1 ? 84 : 68);
        }
        tune(2, bar, 1, 0.4, 80);
    }

    private void choirAndDrum(int bar) {
        if (bar == 1) {
            instruments(52, 43, 60);
        }
        chord(0, bar, 1, 3.9, 84);
        note(1, bar, 1, 3.9, root(bar) - 12, 82);
        hit(bar, 1, KICK, 112);
        hit(bar, 2, STICK, 70);
        hit(bar, 3, KICK, 98);
        hit(bar, 4, STICK, 76);
        if (bar % 4 == 0) {
            hit(bar, 4.5, SNARE, 88);
        }
        tune(2, bar, 1, 0.45, 78);
    }
}
