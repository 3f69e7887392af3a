package org.girandole.music.synth;

import org.girandole.music.Meter;
import org.girandole.music.Rational;
import org.girandole.music.TempoMap;

/**
 * The soundtrack of the example: a piece of the project's own, four minutes in D minor for a small band, written to have
 * what a show hangs on. It opens quietly, swells, breaks into a faster tempo, falls into a hush, climbs faster and faster to
 * its peak, and ends on four strokes and a last one.
 */
public final class HarbourTides {
    private static final int BARS = 93;
    private static final long LENGTH_US = 250_000_000;
    private static final int PIANO = 0;
    private static final int BASS = 1;
    private static final int STRINGS = 2;
    private static final int LEAD = 3;

    private static final int KICK = 36;
    private static final int SNARE = 38;
    private static final int CLOSED_HAT = 42;
    private static final int LOW_TOM = 45;
    private static final int HIGH_TOM = 50;
    private static final int CRASH = 49;

    /** Root and kind of each bar of the eight-bar round: Dm, Bb, F, C, Gm, Dm, Bb, A. Thirds: 3 minor, 4 major. */
    private static final int[] ROOTS = { 50, 46, 53, 48, 55, 50, 46, 45 };
    private static final int[] THIRDS = { 3, 4, 4, 4, 3, 3, 4, 4 };
    /** The tune over one round, a key for every half beat, 0 for holding on: two phrases, the second rises to the seventh. */
    private static final int[] TUNE = {
        74, 0, 77, 0, 76, 74, 72, 0, 74, 0, 0, 70, 72, 0, 74, 0,
        77, 0, 76, 0, 77, 79, 81, 0, 79, 0, 76, 0, 72, 0, 0, 0,
        74, 0, 79, 0, 77, 76, 74, 0, 77, 0, 0, 74, 69, 0, 74, 0,
        74, 0, 77, 0, 82, 0, 81, 79, 81, 0, 79, 0, 76, 0, 73, 0 };

    private final PieceWriter out;

    private HarbourTides() {
        TempoMap map = TempoMap.startingAt(2_000_000, Rational.of(72), Meter.COMMON).tempo(33, Rational.of(96))
                .ramp(57, Rational.of(120), 61).build();
        out = new PieceWriter("Harbour Tides", map, BARS);
    }

    /** Writes the piece. */
    public static Piece compose() {
        HarbourTides piece = new HarbourTides();
        piece.band();
        piece.opening();
        piece.swell();
        piece.breakOut(33, 48);
        piece.hush();
        piece.breakOut(57, 90);
        piece.last();
        piece.out.endAt(LENGTH_US);
        return piece.out.piece();
    }

    private void band() {
        out.instrument(PIANO, 0, 100).instrument(BASS, 33, 110).instrument(STRINGS, 48, 80).instrument(LEAD, 73, 100)
                .instrument(PieceWriter.PERCUSSION, 0, 110);
        out.mark("Swell", 9).mark("Break", 33).mark("Hush", 49, Rational.of(3)).mark("Climb", 57).mark("Peak", 61).mark("Last", 91);
    }

    /** Bars 1 to 8: strings and a slow broken chord on the piano. */
    private void opening() {
        for (int bar = 1; bar <= 8; bar++) {
            strings(bar, 50);
            slowChord(bar, 60);
        }
    }

    /** Bars 9 to 32: the tune, a bass, then drums; the last eight bars climb. */
    private void swell() {
        for (int bar = 9; bar <= 32; bar++) {
            strings(bar, 60 + bar);
            if (bar < 25) {
                slowChord(bar, 64 + bar / 2);
            } else {
                brokenChord(bar, 64 + bar / 2);
            }
            bass(bar, bar < 17 ? 2 : 1);
            tune(bar, 70 + bar);
            if (bar >= 17) {
                drums(bar, 60 + bar, 2);
            }
            if (bar % 8 == 1) {
                out.hit(bar, Rational.ONE, CRASH, 60 + bar);
            }
            if (bar >= 29) {
                roll(bar);
            }
        }
    }

    private void breakOut(int from, int to) {
        for (int bar = from; bar <= to; bar++) {
            strings(bar, 90);
            blockChords(bar);
            bass(bar, 1);
            tune(bar, 105);
            drums(bar, 110, 1);
            if ((bar - from) % 8 == 0) {
                out.hit(bar, Rational.ONE, CRASH, 115);
            }
        }
    }

    /** Bars 49 to 56: two strokes of the whole band, then the piano alone. */
    private void hush() {
        for (int beat = 1; beat <= 2; beat++) {
            stroke(49, beat, 100);
        }
        for (int bar = 49; bar <= 56; bar++) {
            brokenChord(bar, 55);
            out.note(BASS, bar, Rational.ONE, Rational.of(4), ROOTS[round(bar)] - 12, 60);
        }
    }

    /** Bars 91 to 93: three strokes, a bar of roll, and everyone once more. */
    private void last() {
        for (int beat = 1; beat <= 3; beat++) {
            stroke(91, beat, 120);
        }
        for (int i = 0; i < 16; i++) {
            out.hit(92, Rational.of(4L + i, 4), SNARE, 70 + 3 * i);
        }
        stroke(BARS, 1, 127);
    }

    /** Everyone at once, in D minor. */
    private void stroke(int bar, int beat, int velocity) {
        Rational length = Rational.of(bar == BARS ? 4 : 1);
        for (int key : new int[] { 38, 50, 57, 62, 65, 69, 74 }) {
            out.note(PIANO, bar, Rational.of(beat), length, key, velocity);
            out.note(STRINGS, bar, Rational.of(beat), length, key, velocity - 10);
        }
        out.hit(bar, Rational.of(beat), KICK, velocity).hit(bar, Rational.of(beat), CRASH, velocity)
                .hit(bar, Rational.of(beat), SNARE, velocity - 7);
    }

    private static int round(int bar) {
        return (bar - 1) % ROOTS.length;
    }

    private static Rational half(int index) {
        return Rational.of(2L + index, 2);
    }

    private int[] chord(int bar) {
        int root = ROOTS[round(bar)];
        return new int[] { root, root + THIRDS[round(bar)], root + 7, root + 12 };
    }

    private void strings(int bar, int velocity) {
        for (int key : chord(bar)) {
            out.note(STRINGS, bar, Rational.ONE, Rational.of(4), key + 12, Math.min(velocity, 100));
        }
    }

    private void brokenChord(int bar, int velocity) {
        int[] order = { 0, 2, 3, 1, 2, 3, 1, 2 };
        for (int i = 0; i < order.length; i++) {
            out.note(PIANO, bar, half(i), Rational.of(1, 2), chord(bar)[order[i]] + 12, velocity + (i == 0 ? 20 : i % 2 == 0 ? 8 : 0));
        }
    }

    /** One key of the chord on each beat. */
    private void slowChord(int bar, int velocity) {
        int[] order = { 0, 2, 3, 2 };
        for (int i = 0; i < order.length; i++) {
            out.note(PIANO, bar, half(2 * i), Rational.ONE, chord(bar)[order[i]] + 12, velocity + (i == 0 ? 20 : i == 2 ? 8 : 0));
        }
    }

    private void blockChords(int bar) {
        for (int beat = 1; beat <= 4; beat++) {
            for (int key : chord(bar)) {
                out.note(PIANO, bar, Rational.of(beat), Rational.of(3, 4), key + 12, beat == 1 ? 100 : 84);
            }
        }
    }

    private void bass(int bar, int everyBeats) {
        for (int beat = 1; beat <= 4; beat += everyBeats) {
            int key = ROOTS[round(bar)] - 12 + (beat == 3 ? 7 : 0);
            out.note(BASS, bar, Rational.of(beat), Rational.of(everyBeats), key, beat == 1 ? 105 : 92);
        }
    }

    private void tune(int bar, int velocity) {
        int start = round(bar) * 8;
        for (int i = 0; i < 8; i++) {
            if (TUNE[start + i] > 0) {
                int length = 1;
                while (i + length < 8 && TUNE[start + i + length] == 0) {
                    length++;
                }
                out.note(LEAD, bar, half(i), Rational.of(length, 2), TUNE[start + i], Math.min(velocity, 110));
            }
        }
    }

    private void drums(int bar, int velocity, int hatsEveryHalf) {
        int loud = Math.min(velocity, 118);
        out.hit(bar, Rational.ONE, KICK, loud).hit(bar, Rational.of(3), KICK, loud - 30);
        out.hit(bar, Rational.of(2), SNARE, loud - 10).hit(bar, Rational.of(4), SNARE, loud - 6);
        for (int i = 0; i < 8; i += hatsEveryHalf) {
            out.hit(bar, half(i), CLOSED_HAT, loud - (i % 2 == 0 ? 40 : 55));
        }
        if (bar % 8 == 0) {
            out.hit(bar, half(6), HIGH_TOM, loud - 5).hit(bar, half(7), LOW_TOM, loud);
        }
    }

    /** Quavers on the snare, louder from bar to bar. */
    private void roll(int bar) {
        for (int i = 0; i < 8; i++) {
            out.hit(bar, half(i), SNARE, Math.min(50 + (bar - 29) * 14 + (i % 2 == 0 ? 12 : 0), 110));
        }
    }
}
