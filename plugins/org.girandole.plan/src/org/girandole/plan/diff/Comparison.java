package org.girandole.plan.diff;

import org.girandole.plan.CheckedPlan;

/**
 * Two states of one show side by side.
 *
 * @param report the difference in words
 */
public record Comparison(PlanDiff diff, DiffReport report) {
    /**
     * Compares.
     *
     * @throws UnrelatedShowsException when these are no two states of one show
     */
    public static Comparison of(CheckedPlan before, CheckedPlan after) throws UnrelatedShowsException {
        String old = before.plan().script().show().name();
        String now = after.plan().script().show().name();
        if (!old.equals(now)) {
            throw new UnrelatedShowsException("'" + old + "' and '" + now + "' are two different shows; only two states of one show can be compared");
        }
        PlanDiff diff = PlanDiff.between(before, after);
        return new Comparison(diff, DiffReporter.report(diff, before, after));
    }

    /** There is nothing that could be compared; the message says which shows they are. */
    public static final class UnrelatedShowsException extends Exception {
        private static final long serialVersionUID = 1;

        UnrelatedShowsException(String message) {
            super(message);
        }
    }
}
