package org.girandole.plan.script;

import java.util.List;
import java.util.Optional;

/**
 * A {@code rehearse} block: one way in which the night goes wrong, and what must come of it all the same. Moments are in the music.
 *
 * @param lost when no timecode arrives
 * @param released when the hold-to-fire control is let go
 * @param drift empty when the firing system's own limit counts, either way
 * @param musicLateUs how much later than its timecode the music runs, microseconds
 * @param slot the slot that the controller is in; empty for the soundtrack's own
 * @param backupAt when the backup controller takes over
 */
public record Rehearsal(String name, String soundtrack, List<Stretch> lost, List<Stretch> released, Optional<Drift> drift, long musicLateUs,
        List<Jump> jumps, Optional<Integer> slot, Optional<TimeExpr> backupAt, List<Expectation> expectations, SourceRef source) {
    public Rehearsal {
        lost = List.copyOf(lost);
        released = List.copyOf(released);
        jumps = List.copyOf(jumps);
        expectations = List.copyOf(expectations);
    }

    /** From a moment to another, which is not part of it. */
    public record Stretch(TimeExpr from, TimeExpr to, SourceRef source) {
    }

    /** At a moment the code goes on from another. */
    public record Jump(TimeExpr to, TimeExpr at, SourceRef source) {
    }

    /** How far the controller's own clock is off, parts per million. */
    public record Drift(Way way, double ppm) {
        /** Whether the clock is slow, fast, or must be thought to be either. */
        public enum Way {
            EITHER, SLOW, FAST
        }
    }

    /** What must come of it. */
    public sealed interface Expectation {
        SourceRef source();
    }

    /** No cue is fired farther from its moment than this, microseconds. */
    public record Limit(Side side, long us, SourceRef source) implements Expectation {
        /** Which side of the moment. */
        public enum Side {
            LATER, EARLIER
        }
    }

    /** Every shot of a cue ends in this way. */
    public record CueEnds(String cue, End end, SourceRef source) implements Expectation {
        /** How a cue ends. */
        public enum End {
            FIRED, SUPPRESSED, SKIPPED
        }
    }
}
