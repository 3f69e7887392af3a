package org.girandole.music;

import java.util.Objects;

/**
 * A place in the music as a musician counts it.
 *
 * @param bar  1 is the first bar of the tempo map; 0 and less lie before it
 * @param beat at least 1, less than the bar's number of beats + 1
 */
public record BarBeat(int bar, Rational beat) {
    public BarBeat {
        Objects.requireNonNull(beat, "beat");
    }

    /** {@code bar 17 beat 3.5}, or {@code bar 17} on the first beat: the way a script says it. */
    @Override
    public String toString() {
        return beat.equals(Rational.ONE) ? "bar " + bar : "bar " + bar + " beat " + beat;
    }
}
