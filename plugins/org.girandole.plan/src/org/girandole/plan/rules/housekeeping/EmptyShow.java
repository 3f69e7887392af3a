package org.girandole.plan.rules.housekeeping;

import org.girandole.plan.Plan;
import org.girandole.plan.Severity;
import org.girandole.plan.rules.Findings;
import org.girandole.plan.rules.Rule;
import org.girandole.plan.rules.RuleInfo;

/** A show in which nothing is fired. */
public final class EmptyShow implements Rule {
    private static final RuleInfo INFO = new RuleInfo("empty-show", RuleInfo.Family.HOUSEKEEPING, Severity.ERROR,
            "Nothing is fired in this show.",
            "A show without cues breaks no rule; it must not be taken for one that has been checked.",
            "a show fires something");

    @Override
    public RuleInfo info() {
        return INFO;
    }

    @Override
    public void check(Plan plan, Findings out) {
        if (plan.cues().isEmpty()) {
            out.report("Nothing is fired in show " + plan.script().show().name() + ", so nothing was checked")
                    .found("0 cues", "1 or more")
                    .remedy("write cues into a 'score', use the file that has them, or correct what keeps them from being read")
                    .at(plan.script().show().source());
        }
    }
}
