package org.girandole.plan.rules.loading;

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

/** A tube number that the rack does not have, or a chain that runs off its end. */
public final class TubeOutOfRange implements SharingRule {
    private static final RuleInfo INFO = new RuleInfo("tube-out-of-range", RuleInfo.Family.LOADING, Severity.ERROR,
            "A tube is named that the rack does not have.",
            "The crew finds no place for the shell and will improvise one.",
            "the script's rack");

    @Override
    public RuleInfo info() {
        return INFO;
    }

    @Override
    public void check(Workings workings, Findings out) {
        Plan plan = workings.plan();
        ScriptIndex index = workings.index();
        for (PlannedCue cue : plan.cues()) {
            index.rack(cue).ifPresent(rack -> {
                PlannedCue.Tube tube = cue.tube().orElseThrow();
                long last = tube.tube() + cue.pieces() - 1L;
                if (tube.tube() < 1 || last > rack.tubes()) {
                    out.report(Cues.name(cue) + " wants tube " + tube.tube() + (last > tube.tube() ? " to " + last : "") + " of rack "
                            + rack.name() + ", which has " + Quantity.count(rack.tubes(), "tube", "tubes"))
                            .found("tube " + (last > tube.tube() ? tube.tube() + " to " + last : tube.tube()), "1 to " + rack.tubes())
                            .basis(Basis.script("rack " + rack.name() + ", " + Quantity.count(rack.tubes(), "tube", "tubes"), rack.source()))
                            .remedy("name a tube of the rack, or leave it out and let it be chosen")
                            .about(Cues.subject(cue, rack.name()))
                            .data(Map.of("rack", rack.name(), "tubes", Integer.toString(rack.tubes())))
                            .at(Cues.tubeSource(cue));
                }
            });
        }
    }
}
