package org.girandole.plan.rules.loading;

import java.util.LinkedHashMap;
import java.util.Map;
import org.girandole.plan.Plan;
import org.girandole.plan.PlannedCue;
import org.girandole.plan.Severity;
import org.girandole.plan.Subject;
import org.girandole.plan.rules.Basis;
import org.girandole.plan.rules.Findings;
import org.girandole.plan.rules.Rule;
import org.girandole.plan.rules.RuleInfo;

/** An effect that needs a tube but does not say which size. */
public final class CalibreMissing implements Rule {
    private static final RuleInfo INFO = new RuleInfo("calibre-missing", RuleInfo.Family.LOADING, Severity.ERROR,
            "An effect that needs a tube has no calibre.",
            "Without it no tube can be chosen or checked, nothing can be estimated, and no distance table can be read.",
            Basis.COMMON_PRACTICE);

    @Override
    public RuleInfo info() {
        return INFO;
    }

    @Override
    public void check(Plan plan, Findings out) {
        Map<String, PlannedCue> silent = new LinkedHashMap<>();
        for (PlannedCue cue : plan.cues()) {
            if (cue.effect().kind().needsTube() && cue.effect().calibreM().isEmpty()) {
                silent.putIfAbsent(cue.effect().name(), cue);
            }
        }
        silent.forEach((effect, cue) -> {
            boolean refused = cue.effect().refused().contains("calibre");
            out.report("The " + cue.effect().kind().word() + " " + effect
                    + (refused ? " has no calibre that can be read" : " has no calibre") + ", so no tube was checked for it")
                    .found(refused ? "a calibre that makes no sense" : "no calibre", "the inside diameter of the tube it is made for")
                    .remedy((refused ? "correct the calibre of " : "add the calibre to ") + effect + ", such as 'calibre 75 mm'")
                    .about(Subject.of(effect))
                    .at(cue.effect().source());
        });
    }
}
