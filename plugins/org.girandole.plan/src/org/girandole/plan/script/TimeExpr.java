package org.girandole.plan.script;

import java.util.List;
import org.girandole.music.Rational;

/**
 * A moment of a soundtrack as it was written: an anchor and signed steps from it. It is resolved by the plan, not by the
 * language, because beats and bars depend on the tempo at that place.
 */
public record TimeExpr(Anchor anchor, List<Step> steps, SourceRef source) {
    public TimeExpr {
        steps = List.copyOf(steps);
    }

    /** Where the expression starts from. */
    public sealed interface Anchor {
    }

    /** The origin of the enclosing repeat or figure; in a section or score, the first note of the soundtrack. */
    public record Origin() implements Anchor {
    }

    /** A mark of the soundtrack, by name. */
    public record AtMark(String mark) implements Anchor {
    }

    /** A bar, from 1, and a beat in it, from 1. */
    public record AtBar(int bar, Rational beat) implements Anchor {
    }

    /** A time of the soundtrack in microseconds from the first note. */
    public record AtClock(long us) implements Anchor {
    }

    /** One signed step. Seconds are steps of unit MICROSECOND. */
    public record Step(Rational amount, StepUnit unit) {
    }

    /** What a step counts. */
    public enum StepUnit {
        BEAT, BAR, MICROSECOND, FRAME
    }
}
