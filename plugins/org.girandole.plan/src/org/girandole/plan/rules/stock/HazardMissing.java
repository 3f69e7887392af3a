package org.girandole.plan.rules.stock;

import java.util.LinkedHashMap;
import java.util.Map;
import org.girandole.plan.Plan;
import org.girandole.plan.Severity;
import org.girandole.plan.Subject;
import org.girandole.plan.rules.Findings;
import org.girandole.plan.rules.Rule;
import org.girandole.plan.rules.RuleInfo;
import org.girandole.plan.script.Effect;

/** An effect in use without hazard class or UN number. Said once for each effect. */
public final class HazardMissing implements Rule {
    private static final RuleInfo INFO = new RuleInfo("hazard-missing", RuleInfo.Family.STOCK, Severity.WARNING,
            "An effect has no hazard class or no UN number.",
            "The transport summary, the load limits of the van and the store all go by them; what is not classed may not be "
                    + "carried.",
            "UN Model Regulations, class 1: a firework is carried under its UN number and hazard division");

    @Override
    public RuleInfo info() {
        return INFO;
    }

    @Override
    public void check(Plan plan, Findings out) {
        Map<String, Effect> effects = new LinkedHashMap<>();
        plan.cues().forEach(cue -> effects.putIfAbsent(cue.effect().name(), cue.effect()));
        effects.forEach((name, effect) -> {
            String missing = effect.hazardClass().isEmpty() && effect.unNumber().isEmpty() ? "hazard class and UN number"
                    : effect.hazardClass().isEmpty() ? "hazard class" : effect.unNumber().isEmpty() ? "UN number" : "";
            if (!missing.isEmpty()) {
                out.report(name + " has no " + missing)
                        .found("no " + missing, "hazard class and UN number, as on the maker's box")
                        .remedy("add them from the box, such as 'hazard 1.3G UN0335'")
                        .about(Subject.of(name))
                        .at(effect.source());
            }
        });
    }
}
