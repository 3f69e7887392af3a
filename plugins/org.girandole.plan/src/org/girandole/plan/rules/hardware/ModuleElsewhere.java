package org.girandole.plan.rules.hardware;

import java.util.Map;
import org.girandole.plan.Plan;
import org.girandole.plan.PlannedCue;
import org.girandole.plan.Severity;
import org.girandole.plan.rules.Basis;
import org.girandole.plan.rules.Cues;
import org.girandole.plan.rules.Findings;
import org.girandole.plan.rules.RuleInfo;
import org.girandole.plan.rules.ScriptIndex;
import org.girandole.plan.rules.SharingRule;
import org.girandole.plan.rules.Workings;

/** A cue on a module that does not serve its position. */
public final class ModuleElsewhere implements SharingRule {
    private static final RuleInfo INFO = new RuleInfo("module-elsewhere", RuleInfo.Family.HARDWARE, Severity.ERROR,
            "A cue is wired to a module that does not serve its position.",
            "The lead on the wiring sheet would run across the site, and the crew at either position does not know of it.",
            "the script's module");

    @Override
    public RuleInfo info() {
        return INFO;
    }

    @Override
    public void check(Workings workings, Findings out) {
        Plan plan = workings.plan();
        ScriptIndex index = workings.index();
        for (PlannedCue cue : plan.cues()) {
            index.module(cue).filter(module -> !module.positions().contains(cue.position()))
                    .ifPresent(module -> out.report(Cues.name(cue) + " is on module " + module.name() + ", which serves "
                            + String.join(", ", module.positions()))
                            .found("position " + cue.position(), "position " + String.join(", ", module.positions()))
                            .basis(Basis.script("module " + module.name() + " at " + String.join(", ", module.positions()),
                                    module.source()))
                            .remedy("use a module at " + cue.position() + ", or let module " + module.name() + " serve it too")
                            .about(Cues.subject(cue, module.name()))
                            .data(Map.of("module", module.name(), "position", cue.position()))
                            .at(Cues.pinSource(cue)));
        }
    }
}
