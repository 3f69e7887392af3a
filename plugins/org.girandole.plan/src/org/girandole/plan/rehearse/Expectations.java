package org.girandole.plan.rehearse;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.girandole.plan.PlannedCue;
import org.girandole.plan.Times;
import org.girandole.plan.rehearse.CueOutcome.End;
import org.girandole.plan.rehearse.Rehearsed.Pass;
import org.girandole.plan.script.Rehearsal;
import org.girandole.plan.script.Rehearsal.CueEnds;
import org.girandole.plan.script.Rehearsal.Limit;
import org.girandole.plan.script.SourceRef;

/** Holds what came of a night against what was expected of it. */
public final class Expectations {
    private Expectations() {
    }

    /**
     * An expectation that was not met.
     *
     * @param cue the cue concerned, if it is one
     */
    public record Unmet(String message, String found, String allowed, Optional<PlannedCue> cue, SourceRef source) {
    }

    /** What was not met, one for each expectation and clock, expectation by expectation. */
    public static List<Unmet> unmet(Rehearsal rehearsal, Rehearsed night) {
        List<Unmet> unmet = new ArrayList<>();
        for (Rehearsal.Expectation expectation : rehearsal.expectations()) {
            for (Pass pass : night.passes()) {
                Optional<Unmet> trouble = expectation instanceof Limit limit ? limit(limit, pass, night)
                        : ends((CueEnds) expectation, pass, night);
                trouble.ifPresent(unmet::add);
            }
        }
        return unmet;
    }

    /** A limit that no fired cue can break says nothing: it counts as not met. */
    private static Optional<Unmet> limit(Limit limit, Pass pass, Rehearsed night) {
        String side = limit.side() == Limit.Side.LATER ? "late" : "early";
        String allowed = "at most " + Times.millis(limit.us()) + " " + side;
        if (pass.log().ended(End.FIRED).findAny().isEmpty()) {
            return Optional.of(new Unmet("Rehearsal '" + night.name() + "' fires no cue at all with a clock " + pass.clock()
                    + ", so that none can be too " + side, "no cue fired", "cues fired, " + allowed, Optional.empty(), limit.source()));
        }
        CueOutcome worst = null;
        for (CueOutcome cue : pass.log().ended(End.FIRED).toList()) {
            if (worst == null || by(limit, cue) > by(limit, worst)) {
                worst = cue;
            }
        }
        // The jitter of one seed is no promise: the worst of it is added.
        long byUs = by(limit, worst) + pass.model().jitterUs();
        if (byUs <= limit.us()) {
            return Optional.empty();
        }
        PlannedCue cue = night.cue(worst);
        long more = pass.log().ended(End.FIRED).filter(each -> by(limit, each) + pass.model().jitterUs() > limit.us()).count() - 1;
        return Optional.of(new Unmet("Rehearsal '" + night.name() + "' fires " + name(cue) + " too " + side + " with a clock " + pass.clock()
                + (more > 0 ? ", and " + more + " more" : ""), Times.millis(byUs) + " " + side, allowed, Optional.of(cue), limit.source()));
    }

    private static long by(Limit limit, CueOutcome cue) {
        return limit.side() == Limit.Side.LATER ? cue.lateUs().getAsLong() : -cue.lateUs().getAsLong();
    }

    private static Optional<Unmet> ends(CueEnds expected, Pass pass, Rehearsed night) {
        End wanted = End.valueOf(expected.end().name());
        String said = expected.cue() + " " + wanted.words();
        int shots = 0;
        for (CueOutcome outcome : pass.log().cues()) {
            PlannedCue cue = night.cue(outcome);
            if (cue.cueName().filter(expected.cue()::equals).isPresent()) {
                shots++;
                if (outcome.end() != wanted) {
                    return Optional.of(new Unmet("Rehearsal '" + night.name() + "' expects " + said + ", but with a clock " + pass.clock()
                            + " it is " + outcome.end().words() + " at " + cue.position(), outcome.end().words()
                            + outcome.commandUs().stream().mapToObj(us -> " at " + Times.clock(us)).findFirst().orElse(""), wanted.words(),
                            Optional.of(cue), expected.source()));
                }
            }
        }
        if (shots == 0 && !(wanted == End.SKIPPED && night.notLoaded().stream().anyMatch(cue -> cue.cueName().filter(expected.cue()::equals)
                .isPresent()))) {
            return Optional.of(new Unmet("Rehearsal '" + night.name() + "' expects " + said + ", but slot " + night.slot() + " holds no such cue",
                    "not in slot " + night.slot(), wanted.words(), Optional.empty(), expected.source()));
        }
        return Optional.empty();
    }

    private static String name(PlannedCue cue) {
        return cue.cueName().orElse(cue.what()) + " at " + cue.position();
    }
}
