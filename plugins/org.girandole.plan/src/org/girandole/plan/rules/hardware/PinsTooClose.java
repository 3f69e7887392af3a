package org.girandole.plan.rules.hardware;

import java.util.List;
import java.util.Map;
import org.girandole.plan.Plan;
import org.girandole.plan.PlannedCue;
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
import org.girandole.plan.script.Module;
import org.girandole.plan.script.ModuleType;

/** Two firings of one module that follow each other faster than it can manage. */
public final class PinsTooClose implements SharingRule {
    private static final RuleInfo INFO = new RuleInfo("pins-too-close", RuleInfo.Family.HARDWARE, Severity.ERROR,
            "A module has to fire again sooner than it can.",
            "The drive needs time to recover between firings; the second igniter gets too little current, or none.",
            "the script's module type");

    @Override
    public RuleInfo info() {
        return INFO;
    }

    @Override
    public void check(Workings workings, Findings out) {
        Plan plan = workings.plan();
        ScriptIndex index = workings.index();
        Pins.byModule(plan).forEach((key, cues) -> index.module(key.module()).ifPresent(module -> index.typeOf(module)
                .ifPresent(type -> type.pinGapUs().ifPresent(gapUs -> check(plan, module, type, gapUs, cues, out)))));
    }

    private static void check(Plan plan, Module module, ModuleType type, long gapUs, List<PlannedCue> cues, Findings out) {
        PlannedCue before = cues.get(0);
        for (PlannedCue cue : cues) {
            long apartUs = cue.timing().fireUs() - before.timing().fireUs();
            if (apartUs == 0) {
                continue;
            }
            if (apartUs < gapUs) {
                long laterUs = Shift.us(plan, gapUs - apartUs);
                out.report("Module " + module.name() + " fires " + Cues.name(cue) + " only " + Quantity.span(apartUs) + " after "
                        + Cues.name(before))
                        .found(Quantity.span(apartUs) + " apart", "at once, or at least " + Quantity.span(gapUs) + " apart")
                        .basis(Basis.script("module type " + type.name() + ", pin gap " + Quantity.span(gapUs), type.source()))
                        .remedy("move it at least " + Quantity.span(laterUs) + " later, or the one before it as much earlier, or put it on another module")
                        .about(Cues.subject(cue, module.name()))
                        .data(Map.of("laterUs", Long.toString(laterUs)))
                        .at(cue.source());
            }
            before = cue;
        }
    }
}
