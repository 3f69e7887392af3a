package org.girandole.plan.rules.hardware;

import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
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
import org.girandole.plan.rules.Workings;
import org.girandole.plan.script.Module;
import org.girandole.plan.script.ModuleType;

/** More pins of one module at one moment than it can drive. */
public final class TooManyAtOnce implements SharingRule {
    private static final RuleInfo INFO = new RuleInfo("too-many-at-once", RuleInfo.Family.HARDWARE, Severity.ERROR,
            "A module has to fire more pins at once than it can.",
            "The drive's voltage sags under too many igniters; which of them fire is then a matter of luck.",
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
                .ifPresent(type -> type.pinsAtOnce().ifPresent(limit -> check(module, type, limit, cues, out)))));
    }

    private static void check(Module module, ModuleType type, int limit, List<PlannedCue> cues, Findings out) {
        int from = 0;
        while (from < cues.size()) {
            long fireUs = cues.get(from).timing().fireUs();
            Set<Integer> pins = new HashSet<>();
            PlannedCue excess = null;
            int next = from;
            while (next < cues.size() && cues.get(next).timing().fireUs() == fireUs) {
                PlannedCue cue = cues.get(next++);
                if (pins.add(cue.pin().orElseThrow().pin()) && pins.size() == limit + 1) {
                    excess = cue;
                }
            }
            from = next;
            if (excess != null) {
                out.report("Module " + module.name() + " has to fire " + pins.size() + " pins at once at " + Quantity.moment(fireUs)
                        + " of " + excess.soundtrack() + "; " + Cues.name(excess) + " is one too many")
                        .found(Quantity.count(pins.size(), "pin", "pins") + " at once", "at most " + limit)
                        .basis(Basis.script("module type " + type.name() + ", " + limit + " pins at once", type.source()))
                        .remedy("spread the cues over more modules, or over time")
                        .about(Cues.subject(excess, module.name()))
                        .data(Map.of("excess", Integer.toString(pins.size() - limit)))
                        .at(excess.source());
            }
        }
    }
}
