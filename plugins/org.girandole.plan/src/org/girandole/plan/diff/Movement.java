package org.girandole.plan.diff;

import java.util.List;

/**
 * How far a cue moved and what moved it, microseconds; later is positive.
 *
 * @param fireUs change of the firing
 * @param seenUs change of the moment it is seen or heard
 * @param causes in the order of the delay arithmetic; their parts add up to {@code fireUs}
 */
public record Movement(long fireUs, long seenUs, List<Cause> causes) {
    public Movement {
        causes = List.copyOf(causes);
    }

    /**
     * One reason.
     *
     * @param what the lot, effect, mark or soundtrack that changed; empty where there is no name to give
     * @param byUs its part of the change of the firing
     */
    public record Cause(Kind kind, String what, long byUs) {
    }

    /** Kinds of reasons. */
    public enum Kind {
        SCRIPT("the script line says another time"),
        REPEAT("the repeat or figure around it was changed"),
        MARK("the mark was moved"),
        TEMPO("the tempo was changed"),
        LOT("the lot's measured rise is another"),
        CATALOGUE("the catalogue's rise is another"),
        ESTIMATE("the estimated rise is another"),
        CHAIN("the chain's lead is another"),
        LATENCY("the firing system's latency is another"),
        SOUND("the way of the sound is another"),
        STEP("rounding to the firing step");

        private final String words;

        Kind(String words) {
            this.words = words;
        }

        /** The reason in words. */
        public String words() {
            return words;
        }
    }
}
