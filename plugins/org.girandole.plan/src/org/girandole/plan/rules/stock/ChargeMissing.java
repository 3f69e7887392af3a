package org.girandole.plan.rules.stock;

import java.util.LinkedHashMap;
import java.util.Map;
import org.girandole.plan.Plan;
import org.girandole.plan.Severity;
import org.girandole.plan.Subject;
import org.girandole.plan.rules.Basis;
import org.girandole.plan.rules.Findings;
import org.girandole.plan.rules.Rule;
import org.girandole.plan.rules.RuleInfo;
import org.girandole.plan.script.Effect;

/** An effect in use without a charge. Said once for each effect. */
public final class ChargeMissing implements Rule {
    private static final RuleInfo INFO = new RuleInfo("charge-missing", RuleInfo.Family.STOCK, Severity.WARNING,
            "An effect does not say how much charge it holds.",
            "Charge a position and the transport total are sums; a missing one makes them too small.",
            Basis.COMMON_PRACTICE);

    @Override
    public RuleInfo info() {
        return INFO;
    }

    @Override
    public void check(Plan plan, Findings out) {
        Map<String, Effect> effects = new LinkedHashMap<>();
        plan.cues().forEach(cue -> effects.putIfAbsent(cue.effect().name(), cue.effect()));
        effects.forEach((name, effect) -> {
            if (effect.chargeKg().isEmpty()) {
                out.report(name + " does not say how much charge it holds, so every sum of charge is too small")
                        .found("no charge", "the net explosive content of one item")
                        .remedy("add it from the maker's data, such as 'charge 62 g'")
                        .about(Subject.of(name))
                        .at(effect.source());
            }
        });
    }
}
