package org.girandole.plan.rules;

import org.girandole.plan.Plan;
import org.girandole.plan.fallout.FlightMemory;

/** A rule that needs something worked out of the plan that other rules need as well. */
public interface SharingRule extends Rule {
    @Override
    void check(Workings workings, Findings out);

    @Override
    default void check(Plan plan, Findings out) {
        check(new Workings(plan, new FlightMemory()), out);
    }
}
