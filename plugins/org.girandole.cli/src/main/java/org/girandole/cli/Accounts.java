package org.girandole.cli;

import java.nio.file.Path;
import org.girandole.lang.check.ShowPipeline;
import org.girandole.plan.CheckedPlan;
import org.girandole.plan.Plan;
import org.girandole.plan.account.Account;
import org.girandole.plan.account.LogException;
import org.girandole.plan.account.ShowLog;

/** Shows that were fired, and their logs. */
final class Accounts {
    private Accounts() {
    }

    /** The plan of a show that can be read whole: a cue that was left out would be missing from the account. */
    static CheckedPlan plan(Scripts place) {
        return WholeShow.plan(new ShowPipeline(), place, "its cues are not known");
    }

    /** What became of the cues of a plan, by the text of its log. */
    static Account of(Plan plan, Path log, String written) {
        try {
            return Account.of(plan, ShowLog.parse(written));
        } catch (LogException e) {
            throw new UserException(ExitCode.USAGE, "'" + log + "' is no log of this show: " + e.getMessage() + ".");
        }
    }
}
