package org.girandole.music.synth;

import java.util.List;

/**
 * What an instrument sounds like, as far as a soundtrack to work with needs it: a handful of families for the 128 programs of General MIDI.
 *
 * @param partials      loudness of each
 * @param stiffness     how far partials are stretched, as on a stiff string: the n-th lies at n times the root of 1 + stiffness n²
 * @param fadeS         after so many seconds a partial at 440 Hz has fallen to a thousandth; 0 for one that is kept up
 * @param attackFrames  in which the sound comes up
 * @param releaseFrames in which it dies when the key is let go
 */
record Timbre(double[] partials, double stiffness, double fadeS, int attackFrames, int releaseFrames) {
    private static final Timbre STRUCK = new Timbre(new double[] { 1, 0.6, 0.4, 0.28, 0.2, 0.14, 0.1, 0.07, 0.05, 0.04 }, 4e-4, 4, 90, 3_500);
    private static final Timbre BASS = new Timbre(new double[] { 1, 0.8, 0.35, 0.2, 0.1, 0.05 }, 1e-4, 3, 130, 2_500);
    private static final Timbre BOWED = new Timbre(new double[] { 1, 0.55, 0.4, 0.25, 0.18, 0.12, 0.08, 0.05 }, 0, 0, 4_000, 7_000);
    private static final Timbre BLOWN = new Timbre(new double[] { 1, 0.5, 0.22, 0.1, 0.04 }, 0, 0, 1_300, 2_600);

    /** First programs of the families, by the groups of eight of the General MIDI sound set. */
    private static final List<Family> FAMILIES = List.of(new Family(104, STRUCK), new Family(56, BLOWN), new Family(40, BOWED), new Family(32, BASS),
            new Family(24, STRUCK), new Family(16, BLOWN), new Family(0, STRUCK));

    private static final double THOUSANDTH = 1e-3;
    private static final double A4_HZ = 440;

    private record Family(int first, Timbre timbre) {
    }

    static Timbre of(int program) {
        return FAMILIES.stream().filter(family -> program >= family.first).findFirst().orElseThrow().timbre;
    }

    /** How many times the frequency of the note this partial has. */
    double ratio(int partial) {
        double n = partial + 1;
        return n * StrictMath.sqrt(1 + stiffness * n * n);
    }

    /** What is left of this partial from one frame to the next: higher ones die sooner. */
    double keepsPerFrame(int partial, double frequencyHz) {
        if (fadeS == 0) {
            return 1;
        }
        double seconds = fadeS * StrictMath.sqrt(A4_HZ / (ratio(partial) * frequencyHz));
        return StrictMath.pow(THOUSANDTH, 1 / (seconds * PieceRenderer.SAMPLE_RATE));
    }
}
