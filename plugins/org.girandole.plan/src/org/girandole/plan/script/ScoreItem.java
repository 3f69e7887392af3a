package org.girandole.plan.script;

import java.util.List;
import java.util.Optional;

/** What stands in a section: a cue, a repetition, or an instance of a figure. */
public sealed interface ScoreItem {
    SourceRef source();

    /**
     * One cue line.
     *
     * @param name given with {@code cue NAME at}
     * @param positions expanded, in the order in which a distribution walks them
     * @param count shots at each position
     * @param effect name of an effect or chain
     * @param lot drawn from this lot, when the script says so
     * @param fan tilts spread evenly over the shots at a position
     * @param pins written by hand, in the order of the shots; empty when allocated
     * @param tubes written by hand, in the order of the shots; empty when allocated
     * @param leanRefused whether a tilt or a fan is written that cannot be meant: it is not as if it stood upright
     */
    record Cue(Optional<String> name, TimeExpr at, List<String> positions, Distribution distribution, int count, String effect,
            Optional<String> lot, Optional<Tilt> tilt, Optional<TiltRange> fan, boolean heard, List<PinRef> pins,
            List<TubeRef> tubes, Optional<String> note, boolean leanRefused, SourceRef source) implements ScoreItem {
        public Cue {
            positions = List.copyOf(positions);
            pins = List.copyOf(pins);
            tubes = List.copyOf(tubes);
        }

        /** A line all of which can be meant. */
        public Cue(Optional<String> name, TimeExpr at, List<String> positions, Distribution distribution, int count, String effect,
                Optional<String> lot, Optional<Tilt> tilt, Optional<TiltRange> fan, boolean heard, List<PinRef> pins, List<TubeRef> tubes,
                Optional<String> note, SourceRef source) {
            this(name, at, positions, distribution, count, effect, lot, tilt, fan, heard, pins, tubes, note, false, source);
        }
    }

    /** The items again and again; times inside count from each start. */
    record Repeat(int times, Duration every, TimeExpr from, List<ScoreItem> items, SourceRef source) implements ScoreItem {
        public Repeat {
            items = List.copyOf(items);
        }
    }

    /** A figure placed in time, its parameters already put in; times inside count from {@code at}. */
    record Play(String figure, TimeExpr at, List<ScoreItem> items, SourceRef source) implements ScoreItem {
        public Play {
            items = List.copyOf(items);
        }
    }

    /** How the positions of a cue follow each other; {@code every} is there for all but TOGETHER. */
    record Distribution(Order order, Optional<Duration> every) {
        public static final Distribution TOGETHER = new Distribution(Order.TOGETHER, Optional.empty());
    }

    /** Orders of a distribution. */
    enum Order {
        /** All at the same moment. */
        TOGETHER,
        /** One after the other, in the order written. */
        IN_TURN,
        /** From the middle to both ends. */
        OUTWARD,
        /** From both ends to the middle. */
        INWARD,
        /** First, last, second, last but one, and so on. */
        ALTERNATING
    }

    /** A lean of the tube. Positive SIDE angles lean to the right as the audience sees it. */
    record Tilt(double angleDeg, Lean lean, Optional<Double> bearingDeg) {
    }

    /** Which way a tube leans. BEARING leans towards {@code bearingDeg}, degrees clockwise from +y. */
    enum Lean {
        SIDE, TOWARD_AUDIENCE, AWAY_FROM_AUDIENCE, BEARING
    }

    /** A pin written by hand. */
    record PinRef(String module, int pin, SourceRef source) {
    }

    /** A tube written by hand. */
    record TubeRef(String rack, int tube, SourceRef source) {
    }
}
