package org.girandole.plan.diff;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.girandole.plan.Plan;
import org.girandole.plan.PlannedCue;
import org.girandole.plan.PlannedSoundtrack;
import org.girandole.plan.Timing;
import org.girandole.plan.script.TimeExpr;

/** Finds out why a cue fires at another moment, by taking its delay arithmetic apart. */
final class Movements {
    private final Plan before;
    private final Plan after;

    Movements(Plan before, Plan after) {
        this.before = before;
        this.after = after;
    }

    Optional<Movement> of(PlannedCue old, PlannedCue now) {
        Timing a = old.timing();
        Timing b = now.timing();
        long fire = b.fireUs() - a.fireUs();
        long seen = b.seenUs() - a.seenUs();
        if (fire == 0 && seen == 0) {
            return Optional.empty();
        }
        List<Movement.Cause> causes = new ArrayList<>();
        add(causes, whyMoment(old, now), seen);
        long lead = b.leadUs() - a.leadUs();
        add(causes, new Movement.Cause(riseKind(a, b), riseName(old, now, a, b), 0), -(b.riseUs() - a.riseUs() - lead));
        add(causes, new Movement.Cause(Movement.Kind.CHAIN, now.what(), 0), -lead);
        add(causes, new Movement.Cause(Movement.Kind.LATENCY, "", 0), -(b.latencyUs() - a.latencyUs()));
        add(causes, new Movement.Cause(Movement.Kind.SOUND, "", 0), -(b.soundUs() - a.soundUs()));
        add(causes, new Movement.Cause(Movement.Kind.STEP, "", 0), b.roundingUs() - a.roundingUs());
        return Optional.of(new Movement(fire, seen, causes));
    }

    private static void add(List<Movement.Cause> causes, Movement.Cause cause, long byUs) {
        if (byUs != 0) {
            causes.add(new Movement.Cause(cause.kind(), cause.what(), byUs));
        }
    }

    private Movement.Cause whyMoment(PlannedCue old, PlannedCue now) {
        TimeExpr expression = now.script().at();
        if (!Bare.equal(old.script().at(), expression)) {
            return new Movement.Cause(Movement.Kind.SCRIPT, "", 0);
        }
        Optional<PlannedSoundtrack> then = before.soundtrack(old.soundtrack());
        Optional<PlannedSoundtrack> today = after.soundtrack(now.soundtrack());
        if (then.isPresent() && today.isPresent()) {
            if (!Bare.equal(then.get().script().tempo(), today.get().script().tempo())) {
                return new Movement.Cause(Movement.Kind.TEMPO, now.soundtrack(), 0);
            }
            if (expression.anchor() instanceof TimeExpr.AtMark at
                    && !java.util.Objects.equals(then.get().marksUs().get(at.mark()), today.get().marksUs().get(at.mark()))) {
                return new Movement.Cause(Movement.Kind.MARK, at.mark(), 0);
            }
        }
        return new Movement.Cause(Movement.Kind.REPEAT, "", 0);
    }

    private static Movement.Kind riseKind(Timing a, Timing b) {
        if (a.riseSource() == Timing.RiseSource.LOT || b.riseSource() == Timing.RiseSource.LOT) {
            return Movement.Kind.LOT;
        }
        if (a.riseSource() == Timing.RiseSource.ESTIMATED || b.riseSource() == Timing.RiseSource.ESTIMATED) {
            return Movement.Kind.ESTIMATE;
        }
        return Movement.Kind.CATALOGUE;
    }

    private static String riseName(PlannedCue old, PlannedCue now, Timing a, Timing b) {
        if (riseKind(a, b) != Movement.Kind.LOT) {
            return now.effect().name();
        }
        return now.lot().or(old::lot).orElse(now.effect().name());
    }
}
