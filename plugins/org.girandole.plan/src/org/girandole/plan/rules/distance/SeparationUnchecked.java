package org.girandole.plan.rules.distance;

import org.girandole.plan.Plan;
import org.girandole.plan.Severity;
import org.girandole.plan.rules.Findings;
import org.girandole.plan.rules.Rule;
import org.girandole.plan.rules.RuleInfo;

/** A show whose distances to the audience nobody has computed. */
public final class SeparationUnchecked implements Rule {
    private static final RuleInfo INFO = new RuleInfo("separation-unchecked", RuleInfo.Family.DISTANCE, Severity.ERROR,
            "The distances to the audience were not checked.",
            "Distance is what keeps the audience alive when everything else goes wrong. A show is not clean as long as it is "
                    + "unknown.",
            "the authority having jurisdiction sets the distances; no show is without them");

    @Override
    public RuleInfo info() {
        return INFO;
    }

    @Override
    public void check(Plan plan, Findings out) {
        if (plan.cues().isEmpty()) {
            return;
        }
        String found = plan.script().show().separation().map(table -> "table " + table + " is named, but was not applied")
                .orElse("no distance table is named");
        out.report("The distances from what is fired to the audience and to protected places were not checked")
                .found(found, "a distance for every effect at every position")
                .remedy("measure the distances on the site plan against the rules of your authority, and write down who agreed in a waiver")
                .at(plan.script().show().source());
    }
}
