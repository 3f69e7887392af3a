package org.girandole.plan.rules.stock;

import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Set;
import org.girandole.plan.Plan;
import org.girandole.plan.PlannedCue;
import org.girandole.plan.Severity;
import org.girandole.plan.Subject;
import org.girandole.plan.rules.Basis;
import org.girandole.plan.rules.Findings;
import org.girandole.plan.rules.Rule;
import org.girandole.plan.rules.RuleInfo;
import org.girandole.plan.script.Effect;

/** An effect in use of which no lot is known. Said once for each effect. */
public final class LotMissing implements Rule {
    private static final RuleInfo INFO = new RuleInfo("lot-missing", RuleInfo.Family.STOCK, Severity.WARNING,
            "No lot of an effect in use is known.",
            "Whether it is on the shelf was not checked, and its rise is the catalogue's, not what this delivery measured.",
            Basis.COMMON_PRACTICE);

    @Override
    public RuleInfo info() {
        return INFO;
    }

    @Override
    public void check(Plan plan, Findings out) {
        Set<String> known = new HashSet<>();
        plan.script().lots().forEach(lot -> known.add(lot.effect()));
        Map<String, Long> uses = new LinkedHashMap<>();
        Map<String, Effect> effects = new LinkedHashMap<>();
        for (PlannedCue cue : plan.cues()) {
            uses.merge(cue.effect().name(), (long) cue.pieces(), Long::sum);
            effects.putIfAbsent(cue.effect().name(), cue.effect());
        }
        effects.forEach((name, effect) -> {
            if (!known.contains(name)) {
                out.report("No lot of " + name + " is known, and the show uses " + uses.get(name) + " of it")
                        .found("no lot, " + uses.get(name) + " used", "lots with counts that cover the show")
                        .remedy("add 'lot' for " + name + " with its count and, where measured, its rise")
                        .about(Subject.of(name))
                        .data(Map.of("effect", name, "used", Long.toString(uses.get(name))))
                        .at(effect.source());
            }
        });
    }
}
