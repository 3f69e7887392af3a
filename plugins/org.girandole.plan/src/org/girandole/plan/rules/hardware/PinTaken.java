package org.girandole.plan.rules.hardware;

import java.util.Map;
import org.girandole.plan.PlannedCue;
import org.girandole.plan.Severity;
import org.girandole.plan.rules.Cues;
import org.girandole.plan.rules.Findings;
import org.girandole.plan.rules.Quantity;
import org.girandole.plan.rules.RuleInfo;
import org.girandole.plan.rules.SharingRule;
import org.girandole.plan.rules.Workings;

/** Two firings at different moments on one pin: it can fire once. Soundtracks of one show share the night, and so the pins. */
public final class PinTaken implements SharingRule {
    private static final RuleInfo INFO = new RuleInfo("pin-taken", RuleInfo.Family.HARDWARE, Severity.ERROR,
            "Two cues use the same pin at different moments.",
            "A pin fires once. Both igniters go with the first cue, and nothing is left for the second.",
            "a pin fires all its igniters at once");

    @Override
    public RuleInfo info() {
        return INFO;
    }

    @Override
    public void check(Workings workings, Findings out) {
        Pins.used(workings).forEach((pin, cues) -> {
            PlannedCue owner = cues.get(0);
            for (PlannedCue cue : cues) {
                boolean sameMoment = cue.soundtrack().equals(owner.soundtrack())
                        && cue.timing().fireUs() == owner.timing().fireUs();
                if (!sameMoment) {
                    out.report("Pin " + pin.pin() + " of module " + pin.module() + " is wanted by " + Cues.name(cue)
                            + ", but " + Cues.name(owner) + " has it")
                            .found("fires at " + Quantity.moment(cue.timing().fireUs()) + " of " + cue.soundtrack(),
                                    "only what fires with it, at " + Quantity.moment(owner.timing().fireUs()) + " of "
                                            + owner.soundtrack())
                            .remedy("give one of them another pin, or leave the pin out and let it be chosen")
                            .about(Cues.subject(cue, pin.module()))
                            .data(Map.of("module", pin.module(), "pin", Integer.toString(pin.pin())))
                            .at(Cues.pinSource(cue));
                }
            }
        });
    }
}
