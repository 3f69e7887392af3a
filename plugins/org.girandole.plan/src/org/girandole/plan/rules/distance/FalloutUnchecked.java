package org.girandole.plan.rules.distance;

import java.util.LinkedHashMap;
import java.util.Map;
import org.girandole.plan.Plan;
import org.girandole.plan.Severity;
import org.girandole.plan.Subject;
import org.girandole.plan.fallout.FalloutAreas;
import org.girandole.plan.rules.Basis;
import org.girandole.plan.rules.Findings;
import org.girandole.plan.rules.Rule;
import org.girandole.plan.rules.RuleInfo;
import org.girandole.plan.script.Site;

/** Shells whose fallout could not be held against anything, and why. */
public final class FalloutUnchecked implements Rule {
    private static final RuleInfo INFO = new RuleInfo("fallout-unchecked", RuleInfo.Family.DISTANCE, Severity.ERROR,
            "Where unburst shells and debris come down was not checked.",
            "Everybody inside that area must be known and away. Nobody can clear an area that nobody has drawn.",
            Basis.COMMON_PRACTICE);

    @Override
    public RuleInfo info() {
        return INFO;
    }

    @Override
    public void check(Plan plan, Findings out) {
        if (plan.cues().stream().noneMatch(FalloutAreas::concerns)) {
            return;
        }
        Ground ground = Ground.of(plan);
        if (ground.boundary().isEmpty()) {
            String why = plan.script().site().map(site -> "site " + site.name() + " has no boundary").orElse("the show has no site");
            out.report("Where unburst shells and debris come down was not checked: " + why)
                    .found(why, "the boundary of the area that is cleared of people")
                    .remedy("add 'boundary' and the corners of the cleared area to the site")
                    .at(plan.script().site().map(Site::source).orElse(plan.script().show().source()));
        }
        Map<String, FalloutAreas.Unknown> once = new LinkedHashMap<>();
        FalloutAreas.unknown(plan).forEach(unknown -> once.putIfAbsent(unknown.first().effect().name(), unknown));
        once.forEach((effect, unknown) -> out.report("Where " + effect + " comes down was not computed: " + unknown.why())
                .found(unknown.why(), "data that a flight can be computed from")
                .remedy("add calibre, mass, apex and spread to " + effect)
                .about(Subject.of(effect))
                .at(unknown.first().effect().source()));
    }
}
