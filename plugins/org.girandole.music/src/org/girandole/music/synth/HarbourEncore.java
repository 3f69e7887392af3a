package org.girandole.music.synth;

import org.girandole.music.Meter;
import org.girandole.music.Rational;
import org.girandole.music.TempoMap;

/** The encore of the example: a minute of waltz in G, the project's own, that turns faster half way and ends softly. */
public final class HarbourEncore {
    private static final int BARS = 30;
    private static final long LENGTH_US = 60_000_000;
    private static final int PIANO = 0;
    private static final int BASS = 1;
    private static final int STRINGS = 2;
    private static final int LEAD = 3;
    private static final int KICK = 36;
    private static final int RIM = 37;
    private static final int CRASH = 49;

    /** Root and kind of each bar of the six-bar round: G, Em, C, Am, D, G. Thirds: 3 minor, 4 major. */
    private static final int[] ROOTS = { 55, 52, 48, 57, 50, 55 };
    private static final int[] THIRDS = { 4, 3, 4, 3, 4, 4 };
    /** The tune over one round, a key for every beat, 0 for holding on. */
    private static final int[] TUNE = { 74, 0, 71, 76, 74, 71, 72, 0, 76, 74, 72, 69, 66, 69, 74, 71, 0, 0 };

    private final PieceWriter out;

    private HarbourEncore() {
        Meter three = new Meter(3, 4);
        TempoMap map = TempoMap.startingAt(1_000_000, Rational.of(90), three).tempo(13, Rational.of(108), three).build();
        out = new PieceWriter("Harbour Encore", map, BARS);
    }

    /** Writes the piece. */
    public static Piece compose() {
        HarbourEncore piece = new HarbourEncore();
        piece.out.instrument(PIANO, 0, 105).instrument(BASS, 33, 110).instrument(STRINGS, 48, 75).instrument(LEAD, 73, 100)
                .instrument(PieceWriter.PERCUSSION, 0, 105);
        piece.out.mark("Lift", 5).mark("Turn", 13);
        for (int bar = 1; bar < BARS; bar++) {
            piece.bar(bar);
        }
        piece.last();
        piece.out.endAt(LENGTH_US);
        return piece.out.piece();
    }

    private void bar(int bar) {
        int round = (bar - 1) % ROOTS.length;
        int root = ROOTS[round];
        // Softer and softer after the last salute.
        int louder = bar >= 25 ? -6 * (bar - 24) : bar >= 13 ? 15 : bar >= 5 ? 5 : -5;
        out.note(BASS, bar, Rational.ONE, Rational.of(3), root - 12, 95 + louder);
        for (int key : new int[] { root, root + THIRDS[round], root + 7 }) {
            out.note(STRINGS, bar, Rational.ONE, Rational.of(3), key + 12, 75 + louder);
            out.note(PIANO, bar, Rational.of(2), Rational.of(1, 2), key + 12, 78 + louder);
            out.note(PIANO, bar, Rational.of(3), Rational.of(1, 2), key + 12, 74 + louder);
        }
        for (int beat = 0; beat < 3; beat++) {
            int key = TUNE[3 * round + beat];
            if (key > 0) {
                out.note(LEAD, bar, Rational.of(beat + 1L), Rational.ONE, key, 90 + louder);
            }
        }
        if (bar >= 5) {
            out.hit(bar, Rational.ONE, KICK, 100 + louder).hit(bar, Rational.of(2), RIM, 75 + louder).hit(bar, Rational.of(3), RIM, 72 + louder);
        }
        if (bar == 13 || bar == 24) {
            out.hit(bar, Rational.ONE, CRASH, 110);
        }
    }

    private void last() {
        for (int key : new int[] { 43, 55, 59, 62, 67 }) {
            out.note(PIANO, BARS, Rational.ONE, Rational.of(3), key, 60);
            out.note(STRINGS, BARS, Rational.ONE, Rational.of(3), key, 50);
        }
    }
}
