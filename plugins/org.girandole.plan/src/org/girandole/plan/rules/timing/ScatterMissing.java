package org.girandole.plan.rules.timing;

import java.util.LinkedHashMap;
import java.util.Map;
import org.girandole.plan.Plan;
import org.girandole.plan.PlannedCue;
import org.girandole.plan.Severity;
import org.girandole.plan.Subject;
import org.girandole.plan.Timing.RiseSource;
import org.girandole.plan.rules.Basis;
import org.girandole.plan.rules.Findings;
import org.girandole.plan.rules.Quantity;
import org.girandole.plan.rules.Rule;
import org.girandole.plan.rules.RuleInfo;

/** An effect that rises, whose scatter nobody wrote down: its error budget says less than the truth. */
public final class ScatterMissing implements Rule {
    private static final RuleInfo INFO = new RuleInfo("scatter-missing", RuleInfo.Family.TIMING, Severity.WARNING,
            "An effect rises, but nothing says how much its rise scatters.",
            "No two shells rise alike. Without the scatter the error budget is too small and a burst looks surer than it is.",
            Basis.COMMON_PRACTICE);

    @Override
    public RuleInfo info() {
        return INFO;
    }

    @Override
    public void check(Plan plan, Findings out) {
        Map<String, PlannedCue> silent = new LinkedHashMap<>();
        for (PlannedCue cue : plan.cues()) {
            boolean written = cue.timing().riseSource() == RiseSource.LOT || cue.timing().riseSource() == RiseSource.CATALOGUE;
            if (written && cue.effect().kind().rises() && cue.timing().riseToleranceUs() == 0) {
                silent.putIfAbsent(cue.effect().name(), cue);
            }
        }
        silent.forEach((effect, cue) -> out.report("The rise of " + effect + " has no scatter, so its error budget is too small")
                .found("rise " + Quantity.span(cue.timing().riseUs() - cue.timing().leadUs()) + ", no scatter",
                        "a rise with the scatter measured or given by the maker")
                .remedy("write the scatter after the rise, such as 'rise "
                        + Quantity.span(cue.timing().riseUs() - cue.timing().leadUs()) + " +- 150 ms'")
                .about(Subject.of(effect))
                .at(cue.effect().source()));
    }
}
