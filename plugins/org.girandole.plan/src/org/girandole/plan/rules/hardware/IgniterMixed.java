package org.girandole.plan.rules.hardware;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import org.girandole.plan.Plan;
import org.girandole.plan.PlannedCue;
import org.girandole.plan.Severity;
import org.girandole.plan.rules.Cues;
import org.girandole.plan.rules.Findings;
import org.girandole.plan.rules.RuleInfo;
import org.girandole.plan.rules.SharingRule;
import org.girandole.plan.rules.Workings;
import org.girandole.plan.script.FiringSystem;

/** Igniters of different types joined in series on one pin. */
public final class IgniterMixed implements SharingRule {
    private static final RuleInfo INFO = new RuleInfo("igniter-mixed", RuleInfo.Family.HARDWARE, Severity.ERROR,
            "Igniters of different types share a pin in series.",
            "The quicker one opens the circuit before the slower one has had enough: the slower one does not fire.",
            "1. SprengV (Germany) s. 27 forbids mixing resistance groups in one delivery; series only with one type: common "
                    + "practice, no source");

    @Override
    public RuleInfo info() {
        return INFO;
    }

    @Override
    public void check(Workings workings, Findings out) {
        Plan plan = workings.plan();
        boolean series = plan.script().firingSystem().map(system -> system.join() == FiringSystem.Join.SERIES).orElse(true);
        if (!series) {
            return;
        }
        Pins.used(workings).forEach((pin, used) -> {
            List<PlannedCue> cues = new ArrayList<>(used);
            cues.sort(Comparator.comparing(PlannedCue::source));
            String first = type(cues.get(0));
            cues.stream().filter(cue -> !type(cue).equals(first)).findFirst().ifPresent(cue -> out
                    .report("Pin " + pin.pin() + " of module " + pin.module() + " joins igniter " + type(cue) + " of " + Cues.name(cue)
                            + " in series with " + first)
                    .found(first + " and " + type(cue), "one type on a pin")
                    .remedy("put them on two pins, or use one igniter type for both")
                    .about(Cues.subject(cue, pin.module()))
                    .at(Cues.pinSource(cue)));
        });
    }

    private static String type(PlannedCue cue) {
        return cue.effect().igniter().orElse("an unknown type");
    }
}
