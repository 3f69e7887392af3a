package org.girandole.music;

/**
 * A time signature.
 *
 * @param beatsPerBar the upper number, 1 to 64
 * @param beatUnit    the lower number, the note that counts as one beat: 1, 2, 4, 8, 16, 32 or 64
 * @throws MusicTimeException for other numbers
 */
public record Meter(int beatsPerBar, int beatUnit) {
    public static final Meter COMMON = new Meter(4, 4);

    private static final int MOST = 64;

    public Meter {
        if (beatsPerBar < 1 || beatsPerBar > MOST) {
            throw new MusicTimeException("A meter of " + beatsPerBar + "/" + beatUnit + " has " + beatsPerBar
                    + " beats in a bar; 1 to " + MOST + " are possible");
        }
        if (beatUnit < 1 || beatUnit > MOST || Integer.bitCount(beatUnit) != 1) {
            throw new MusicTimeException("A meter of " + beatsPerBar + "/" + beatUnit
                    + " has no such note: the lower number must be 1, 2, 4, 8, 16, 32 or 64");
        }
    }

    /** As written: {@code 4/4}. */
    @Override
    public String toString() {
        return beatsPerBar + "/" + beatUnit;
    }
}
