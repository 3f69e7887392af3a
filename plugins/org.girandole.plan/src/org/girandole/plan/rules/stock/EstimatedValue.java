package org.girandole.plan.rules.stock;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.girandole.plan.Plan;
import org.girandole.plan.PlannedCue;
import org.girandole.plan.Severity;
import org.girandole.plan.Subject;
import org.girandole.plan.Timing.RiseSource;
import org.girandole.plan.rules.Findings;
import org.girandole.plan.rules.Rule;
import org.girandole.plan.rules.RuleInfo;
import org.girandole.plan.script.Effect;

/** Values that nobody wrote down and that were estimated from the calibre. Said once for each effect. */
public final class EstimatedValue implements Rule {
    private static final RuleInfo INFO = new RuleInfo("estimated-value", RuleInfo.Family.STOCK, Severity.WARNING,
            "A value of an effect was estimated from its calibre.",
            "An estimate may be off by seconds or tens of metres. It must never pass for the maker's data.",
            "published tables of shell sizes; the estimate's own source is in its derivation");

    @Override
    public RuleInfo info() {
        return INFO;
    }

    @Override
    public void check(Plan plan, Findings out) {
        Map<String, PlannedCue> firsts = new LinkedHashMap<>();
        Set<String> riseEstimated = new HashSet<>();
        for (PlannedCue cue : plan.cues()) {
            firsts.putIfAbsent(cue.effect().name(), cue);
            if (cue.timing().riseSource() == RiseSource.ESTIMATED) {
                riseEstimated.add(cue.effect().name());
            }
        }
        firsts.forEach((name, cue) -> {
            Effect effect = cue.effect();
            if (!effect.kind().rises()) {
                return;
            }
            List<String> missing = new ArrayList<>();
            if (riseEstimated.contains(name) && !effect.refused().contains("rise")) {
                missing.add("rise");
            }
            if (effect.apexM().isEmpty() && !effect.refused().contains("apex")) {
                missing.add("apex");
            }
            if (effect.spreadM().isEmpty() && !effect.refused().contains("spread")) {
                missing.add("spread");
            }
            if (!missing.isEmpty()) {
                out.report("Of " + name + " nothing is written about its " + String.join(", ", missing)
                        + ": where that is needed it is estimated from the calibre")
                        .found("no " + String.join(", no ", missing), "the maker's data, or a measurement")
                        .remedy("add " + String.join(", ", missing) + " to " + name)
                        .about(Subject.of(name))
                        .data(Map.of("missing", String.join(",", missing)))
                        .at(effect.source());
            }
        });
    }
}
