package org.girandole.plan.rules.loading;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.girandole.plan.Plan;
import org.girandole.plan.PlannedCue;
import org.girandole.plan.Severity;
import org.girandole.plan.Subject;
import org.girandole.plan.rules.Basis;
import org.girandole.plan.rules.Findings;
import org.girandole.plan.rules.RuleInfo;
import org.girandole.plan.rules.ScriptIndex;
import org.girandole.plan.rules.SharingRule;
import org.girandole.plan.rules.Workings;

/** Racks in use, loaded with shells, that do not say how long their tubes are. */
public final class TubeLengthMissing implements SharingRule {
    private static final RuleInfo INFO = new RuleInfo("tube-length-missing", RuleInfo.Family.LOADING, Severity.WARNING,
            "A rack does not say how long its tubes are.",
            "Whether a tube is long enough for its shell could not be checked.",
            Basis.COMMON_PRACTICE);

    @Override
    public RuleInfo info() {
        return INFO;
    }

    @Override
    public void check(Workings workings, Findings out) {
        Plan plan = workings.plan();
        ScriptIndex index = workings.index();
        Map<String, PlannedCue> silent = new LinkedHashMap<>();
        for (PlannedCue cue : plan.cues()) {
            boolean unknown = index.rack(cue).flatMap(rack -> rack.runOf(cue.tube().orElseThrow().tube()))
                    .filter(run -> run.lengthM().isEmpty()).isPresent();
            if (unknown && cue.effect().kind().rises()) {
                silent.putIfAbsent(cue.tube().orElseThrow().rack(), cue);
            }
        }
        silent.forEach((name, cue) -> index.rack(cue).ifPresent(rack -> out
                .report("Rack " + name + " does not say how long its tubes are, so " + cue.effect().name() + " was not checked against it")
                .found("no length", "the inside length of the tubes")
                .remedy("measure the tubes and add their length to rack " + name)
                .about(new Subject(List.of(name), List.of(rack.position())))
                .at(rack.source())));
    }
}
