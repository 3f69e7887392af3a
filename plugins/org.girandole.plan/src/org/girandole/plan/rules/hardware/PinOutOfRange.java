package org.girandole.plan.rules.hardware;

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
import org.girandole.plan.rules.Workings;

/** A pin number that the module does not have. */
public final class PinOutOfRange implements SharingRule {
    private static final RuleInfo INFO = new RuleInfo("pin-out-of-range", RuleInfo.Family.HARDWARE, Severity.ERROR,
            "A pin is named that the module does not have.",
            "Nobody can wire it, and on the night somebody will pick another one without telling.",
            "the script's module type");

    @Override
    public RuleInfo info() {
        return INFO;
    }

    @Override
    public void check(Workings workings, Findings out) {
        Plan plan = workings.plan();
        ScriptIndex index = workings.index();
        for (PlannedCue cue : plan.cues()) {
            cue.pin().ifPresent(pin -> index.moduleType(cue).filter(type -> pin.pin() < 1 || pin.pin() > type.pins())
                    .ifPresent(type -> out.report(Cues.name(cue) + " wants pin " + pin.pin() + " of module " + pin.module()
                            + ", which has " + Quantity.count(type.pins(), "pin", "pins"))
                            .found("pin " + pin.pin(), "1 to " + type.pins())
                            .basis(Basis.script("module type " + type.name() + ", pins " + type.pins(), type.source()))
                            .remedy("name a pin from 1 to " + type.pins() + ", or leave it out and let it be chosen")
                            .about(Cues.subject(cue, pin.module()))
                            .data(Map.of("module", pin.module(), "pins", Integer.toString(type.pins())))
                            .at(Cues.pinSource(cue))));
        }
    }
}
