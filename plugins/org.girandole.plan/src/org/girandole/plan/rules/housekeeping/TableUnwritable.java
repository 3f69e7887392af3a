package org.girandole.plan.rules.housekeeping;

import org.girandole.plan.Plan;
import org.girandole.plan.Severity;
import org.girandole.plan.Subject;
import org.girandole.plan.rules.Findings;
import org.girandole.plan.rules.Rule;
import org.girandole.plan.rules.RuleInfo;
import org.girandole.plan.table.LayoutCheck;

/** A table whose layout cannot be filled or written. */
public final class TableUnwritable implements Rule {
    private static final RuleInfo INFO = new RuleInfo("table-unwritable", RuleInfo.Family.HOUSEKEEPING, Severity.ERROR,
            "A table cannot be written as it is laid out.",
            "Without the table the controller is not loaded. The day of the release is too late to find that out.",
            "the list of fields and formats in docs/tables.md");

    @Override
    public RuleInfo info() {
        return INFO;
    }

    @Override
    public void check(Plan plan, Findings out) {
        LayoutCheck.problems(plan.script().tables()).forEach(problem -> out.report(problem.message())
                .found(problem.found(), problem.allowed())
                .remedy(problem.remedy())
                .about(Subject.of(problem.table()))
                .at(problem.source()));
    }
}
