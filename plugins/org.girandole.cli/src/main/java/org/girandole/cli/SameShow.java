package org.girandole.cli;

import org.girandole.plan.CheckedPlan;

/** Only two states of one show can be compared. */
final class SameShow {
    private SameShow() {
    }

    static void require(CheckedPlan before, CheckedPlan after) {
        String old = before.plan().script().show().name();
        String now = after.plan().script().show().name();
        if (!old.equals(now)) {
            throw new UserException(ExitCode.USAGE, "these are two different shows, '" + old + "' and '" + now
                    + "'. Compare two states of one show.");
        }
    }
}
