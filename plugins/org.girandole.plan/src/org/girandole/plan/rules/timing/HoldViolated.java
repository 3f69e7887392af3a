package org.girandole.plan.rules.timing;

import java.util.Optional;
import org.girandole.plan.Plan;
import org.girandole.plan.PlannedCue;
import org.girandole.plan.PlannedSoundtrack.Hold;
import org.girandole.plan.Severity;
import org.girandole.plan.rules.Basis;
import org.girandole.plan.rules.Cues;
import org.girandole.plan.rules.Findings;
import org.girandole.plan.rules.Quantity;
import org.girandole.plan.rules.RuleInfo;
import org.girandole.plan.rules.ScriptIndex;
import org.girandole.plan.rules.SharingRule;
import org.girandole.plan.rules.Shift;
import org.girandole.plan.rules.Workings;

/** Something that is fired, bursts or still burns while the script wants the sky empty. Scatter counts against the cue. */
public final class HoldViolated implements SharingRule {
    private static final RuleInfo INFO = new RuleInfo("hold-violated", RuleInfo.Family.TIMING, Severity.ERROR,
            "Something is fired, bursts or burns inside a hold.",
            "A hold is there because somebody or something passes below. The shooter lets go; what is already lit goes on.",
            "the script's hold");

    @Override
    public RuleInfo info() {
        return INFO;
    }

    @Override
    public void check(Workings workings, Findings out) {
        Plan plan = workings.plan();
        ScriptIndex index = workings.index();
        for (PlannedCue cue : workings.oncePerPlace()) {
            index.soundtrack(cue).ifPresent(track -> track.holds().forEach(hold -> check(plan, cue, hold, out)));
        }
    }

    private static void check(Plan plan, PlannedCue cue, Hold hold, Findings out) {
        long fireUs = cue.timing().fireUs();
        Optional<Long> burnsUs = Cues.seenForUs(cue.effect());
        long goneUs = Cues.goneUs(cue);
        if (fireUs >= hold.toUs() || goneUs < hold.fromUs()) {
            return;
        }
        String what = whatHappens(cue, hold);
        out.report(Cues.name(cue) + " " + what + " in the hold '" + hold.reason() + "'")
                .found("fired " + Quantity.moment(fireUs) + ", gone by " + Quantity.moment(goneUs)
                        + (burnsUs.isEmpty() ? " or later: how long it burns is not known" : ""),
                        "nothing from " + Quantity.moment(hold.fromUs()) + " to " + Quantity.moment(hold.toUs()))
                .basis(Basis.script("hold '" + hold.reason() + "'", hold.source()))
                .remedy("move the cue at least " + Quantity.span(Shift.lastSeenUs(plan, cue, goneUs - hold.fromUs() + 1)) + " earlier, or so that it is fired at "
                        + Quantity.moment(hold.toUs()) + " or later")
                .about(Cues.subject(cue))
                .at(cue.source());
    }

    private static String whatHappens(PlannedCue cue, Hold hold) {
        if (inside(cue.timing().fireUs(), hold)) {
            return "is fired";
        }
        boolean bursts = inside(cue.timing().seenUs(), hold) || cue.items().stream().anyMatch(item -> inside(item.seenUs(), hold));
        if (bursts) {
            return "is seen";
        }
        return cue.timing().seenUs() >= hold.toUs() ? "is in the air" : "may still burn";
    }

    private static boolean inside(long us, Hold hold) {
        return us >= hold.fromUs() && us < hold.toUs();
    }
}
