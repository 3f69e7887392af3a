package org.girandole.plan.rules.timing;

import org.girandole.plan.Plan;
import org.girandole.plan.Severity;
import org.girandole.plan.rules.Basis;
import org.girandole.plan.rules.Findings;
import org.girandole.plan.rules.Rule;
import org.girandole.plan.rules.RuleInfo;

/** A show that does not say how close to the music is close enough. */
public final class SyncMissing implements Rule {
    private static final RuleInfo INFO = new RuleInfo("sync-missing", RuleInfo.Family.TIMING, Severity.WARNING,
            "The show does not say how far off a burst may be.",
            "Without that figure no burst can be too late, and the rules about scatter and steps have nothing to check against.",
            Basis.COMMON_PRACTICE);

    @Override
    public RuleInfo info() {
        return INFO;
    }

    @Override
    public void check(Plan plan, Findings out) {
        if (plan.script().show().syncWithinUs().isEmpty() && !plan.cues().isEmpty()) {
            out.report("The show does not say how far off its moment a burst may be, so scatter and steps were not checked")
                    .found("no 'sync within'", "a tolerance the audience does not notice, such as 100 ms")
                    .remedy("add 'sync within 100 ms' to the show")
                    .at(plan.script().show().source());
        }
    }
}
