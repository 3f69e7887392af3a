package org.girandole.plan.rules.timing;

import java.util.HashMap;
import java.util.Map;
import org.girandole.plan.Plan;
import org.girandole.plan.PlannedSoundtrack;
import org.girandole.plan.Severity;
import org.girandole.plan.Subject;
import org.girandole.plan.rules.Basis;
import org.girandole.plan.rules.Findings;
import org.girandole.plan.rules.Quantity;
import org.girandole.plan.rules.Rule;
import org.girandole.plan.rules.RuleInfo;
import org.girandole.plan.script.Mark;

/** A mark written after another one of the same file, but lying before it. */
public final class MarkUnordered implements Rule {
    private static final RuleInfo INFO = new RuleInfo("mark-unordered", RuleInfo.Family.TIMING, Severity.WARNING,
            "A mark lies before the mark written above it.",
            "Marks are written down while listening, one after the other. One that falls back in time was most often mistyped, and"
                    + " everything that hangs on it moves with it.",
            Basis.COMMON_PRACTICE);

    @Override
    public RuleInfo info() {
        return INFO;
    }

    @Override
    public void check(Plan plan, Findings out) {
        for (PlannedSoundtrack track : plan.soundtracks()) {
            Map<String, Mark> last = new HashMap<>();
            for (Mark mark : track.script().marks()) {
                Long us = track.marksUs().get(mark.name());
                if (us == null) {
                    continue;
                }
                Mark above = last.put(mark.source().file(), mark);
                Long aboveUs = above == null ? null : track.marksUs().get(above.name());
                if (aboveUs != null && us < aboveUs) {
                    out.report("Mark " + mark.name() + " lies " + Quantity.span(aboveUs - us) + " before " + above.name()
                            + ", the mark above it")
                            .found(mark.name() + " at " + Quantity.moment(us), above.name() + " at " + Quantity.moment(aboveUs) + ", or later")
                            .remedy("correct the time of one of them, or write them in the order in which they are heard")
                            .about(Subject.of(mark.name(), track.name()))
                            .at(mark.source());
                }
            }
        }
    }
}
