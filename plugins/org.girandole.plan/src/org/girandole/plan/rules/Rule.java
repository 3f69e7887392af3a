package org.girandole.plan.rules;

import org.girandole.plan.Plan;

/** One check of the plan. Has no state; looks at the plan alone. */
public interface Rule {
    RuleInfo info();

    /** Reports everything this rule has to say about the plan. */
    void check(Plan plan, Findings out);

    /** The same for a plan of which other rules may have worked out something already. */
    default void check(Workings workings, Findings out) {
        check(workings.plan(), out);
    }
}
