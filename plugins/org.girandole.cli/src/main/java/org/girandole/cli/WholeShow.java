package org.girandole.cli;

import org.girandole.lang.check.CheckedShow;
import org.girandole.lang.check.ShowPipeline;
import org.girandole.plan.CheckedPlan;

/** Shows that are of use only when they can be read whole. */
final class WholeShow {
    private WholeShow() {
    }

    /**
     * The plan of a script.
     *
     * @param without what is not to be had without all of the script, as in {@code there is nothing to compare}
     * @throws UserException when something of it cannot be read
     */
    static CheckedPlan plan(ShowPipeline pipeline, Scripts place, String without) {
        String shown = place.display().apply(place.root().relativize(place.script()).toString());
        return plan(pipeline, place, "the script '" + shown + "'", without, "Mend it; 'girandole check " + shown + "' says all that is wrong with it.");
    }

    /** @param mend what to do about it, as a sentence */
    static CheckedPlan plan(ShowPipeline pipeline, Scripts place, String what, String without, String mend) {
        CheckedShow show = pipeline.check(place.script(), place.root());
        return show.wholePlan().orElseThrow(() -> new UserException(ExitCode.USAGE, what + " cannot be read whole, so " + without
                + show.tornBy().map(why -> ": " + why).orElse("") + ". " + mend));
    }
}
