package org.girandole.plan.rules.hardware;

import java.util.LinkedHashMap;
import java.util.Map;
import org.girandole.plan.Plan;
import org.girandole.plan.PlannedCue;
import org.girandole.plan.Severity;
import org.girandole.plan.Subject;
import org.girandole.plan.rules.Basis;
import org.girandole.plan.rules.Findings;
import org.girandole.plan.rules.Rule;
import org.girandole.plan.rules.RuleInfo;

/** An effect in use that does not say which igniter lights it. */
public final class IgniterMissing implements Rule {
    private static final RuleInfo INFO = new RuleInfo("igniter-missing", RuleInfo.Family.HARDWARE, Severity.ERROR,
            "An effect does not say which igniter lights it.",
            "Without the type neither the firing current nor the test current can be checked; both can hurt somebody.",
            Basis.COMMON_PRACTICE);

    @Override
    public RuleInfo info() {
        return INFO;
    }

    @Override
    public void check(Plan plan, Findings out) {
        Map<String, PlannedCue> silent = new LinkedHashMap<>();
        for (PlannedCue cue : plan.cues()) {
            if (cue.effect().igniter().isEmpty()) {
                silent.putIfAbsent(cue.effect().name(), cue);
            }
        }
        silent.forEach((effect, cue) -> out.report("Nothing says which igniter lights " + effect
                + ", so its firing and test current were not checked")
                .found("no igniter", "the name of an igniter type")
                .remedy("add 'igniter' and the name of an igniter type to " + effect)
                .about(Subject.of(effect))
                .data(Map.of("effect", effect))
                .at(cue.effect().source()));
    }
}
