package org.girandole.plan.rules.loading;

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

/** A cue loaded into a rack that stands at another position. */
public final class RackElsewhere implements SharingRule {
    private static final RuleInfo INFO = new RuleInfo("rack-elsewhere", RuleInfo.Family.LOADING, Severity.ERROR,
            "A cue is loaded into a rack at another position.",
            "The shell goes up somewhere else than its cue says: distances, leads and the picture are all wrong.",
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
            index.rack(cue).filter(rack -> !rack.position().equals(cue.position()))
                    .ifPresent(rack -> out.report(Cues.name(cue) + " is loaded into rack " + rack.name() + ", which stands at "
                            + rack.position())
                            .found("position " + cue.position(), "position " + rack.position())
                            .basis(Basis.script("rack " + rack.name() + " at " + rack.position(), rack.source()))
                            .remedy("use a rack at " + cue.position() + ", or leave the tube out and let it be chosen")
                            .about(Cues.subject(cue, rack.name()))
                            .data(Map.of("rack", rack.name(), "position", cue.position()))
                            .at(Cues.tubeSource(cue)));
        }
    }
}
