package org.girandole.plan.rules.housekeeping;

import org.girandole.plan.Plan;
import org.girandole.plan.Severity;
import org.girandole.plan.rules.Basis;
import org.girandole.plan.rules.Findings;
import org.girandole.plan.rules.Rule;
import org.girandole.plan.rules.RuleInfo;

/** A show without a date. */
public final class ShowUndated implements Rule {
    private static final RuleInfo INFO = new RuleInfo("show-undated", RuleInfo.Family.HOUSEKEEPING, Severity.WARNING,
            "The show has no date.",
            "Sheets of two evenings look alike, and whether a waiver still holds cannot be told.",
            Basis.COMMON_PRACTICE);

    @Override
    public RuleInfo info() {
        return INFO;
    }

    @Override
    public void check(Plan plan, Findings out) {
        if (plan.script().show().date().isEmpty()) {
            out.report("The show has no date, so no sheet says which evening it is for and no waiver's end can be judged")
                    .found("no date", "the day of the show")
                    .remedy("add the day, such as 'on 2027-06-19', to the show")
                    .at(plan.script().show().source());
        }
    }
}
