package org.girandole.plan.rules.hardware;

import java.util.Map;
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

/** More igniters on one pin than the module allows. A type that gives no number is taken to allow one. */
public final class TooManyIgniters implements SharingRule {
    private static final RuleInfo INFO = new RuleInfo("too-many-igniters", RuleInfo.Family.HARDWARE, Severity.ERROR,
            "A pin carries more igniters than its module allows.",
            "In series the current falls with every igniter, in parallel it is shared: in both cases the last ones may not "
                    + "fire.",
            "the script's module type");

    @Override
    public RuleInfo info() {
        return INFO;
    }

    @Override
    public void check(Workings workings, Findings out) {
        ScriptIndex index = workings.index();
        Pins.used(workings).forEach((pin, cues) -> index.module(pin.module()).flatMap(index::typeOf).ifPresent(type -> {
            int limit = type.ignitersPerPin().orElse(1);
            if (cues.size() > limit) {
                PlannedCue excess = cues.get(limit);
                String words = type.ignitersPerPin().map(n -> "at most " + Quantity.count(n, "igniter", "igniters") + " per pin")
                        .orElse("no number of igniters per pin, so one is allowed");
                out.report("Pin " + pin.pin() + " of module " + pin.module() + " carries "
                        + Quantity.count(cues.size(), "igniter", "igniters") + "; " + Cues.name(excess) + " is one too many")
                        .found(Quantity.count(cues.size(), "igniter", "igniters"), "at most " + limit)
                        .basis(Basis.script("module type " + type.name() + ", " + words, type.source()))
                        .remedy("use another pin for " + Quantity.count(cues.size() - limit, "of them", "of them"))
                        .about(Cues.subject(excess, pin.module()))
                        .data(Map.of("excess", Integer.toString(cues.size() - limit)))
                        .at(Cues.pinSource(excess));
            }
        }));
    }
}
