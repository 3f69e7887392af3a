package org.girandole.plan.rules.distance;

import org.girandole.plan.Plan;
import org.girandole.plan.Severity;
import org.girandole.plan.rules.Findings;
import org.girandole.plan.rules.RuleInfo;
import org.girandole.plan.rules.SharingRule;
import org.girandole.plan.rules.Workings;

/** Something fired nearer to the audience than the show's distance table asks. Said once for each effect and position. */
public final class Separation implements SharingRule {
    private static final RuleInfo INFO = new RuleInfo("separation", RuleInfo.Family.DISTANCE, Severity.ERROR,
            "Something is fired too near to the audience.",
            "Distance is what keeps the audience alive when a shell flies wrong, bursts low, or comes down burning.",
            "the distance table that the show names");

    @Override
    public RuleInfo info() {
        return INFO;
    }

    @Override
    public void check(Workings workings, Findings out) {
        Plan plan = workings.plan();
        Ground ground = Ground.of(workings);
        plan.script().separationTable()
                .ifPresent(table -> Distances.worst(workings, ground.audience(), place -> table)
                        .forEach(worst -> worst.report(out, "the audience")));
    }
}
