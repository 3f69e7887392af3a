package org.girandole.plan.rules.distance;

import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.Collectors;
import org.girandole.physics.separation.Applied;
import org.girandole.physics.separation.Requirement;
import org.girandole.physics.separation.Verification;
import org.girandole.plan.Plan;
import org.girandole.plan.Severity;
import org.girandole.plan.Subject;
import org.girandole.plan.rules.Findings;
import org.girandole.plan.rules.RuleInfo;
import org.girandole.plan.rules.SharingRule;
import org.girandole.plan.rules.Workings;

/** Distances that are met, but by a number that nobody checked against its document. Said once for each rule text of the table. */
public final class DistanceUnverified implements SharingRule {
    private static final RuleInfo INFO = new RuleInfo("distance-unverified", RuleInfo.Family.DISTANCE, Severity.WARNING,
            "A distance is met only by a number that nobody checked against its document.",
            "A number that somebody remembers may be that of another edition, or wrong. Met or not, it then says little.",
            "the mark that the distance table gives each of its numbers");

    @Override
    public RuleInfo info() {
        return INFO;
    }

    @Override
    public void check(Workings workings, Findings out) {
        Plan plan = workings.plan();
        Ground ground = Ground.of(workings);
        plan.script().separationTable().ifPresent(table -> {
            Map<List<Applied>, Set<String>> met = new LinkedHashMap<>();
            Distances.each(workings, ground.audience(), place -> table, held -> add(met, held));
            Distances.each(workings, ground.protectedPlaces(), place -> Protect.times(table, place), held -> add(met, held));
            met.forEach((rules, effects) -> {
                String sources = rules.stream().map(rule -> rule.citation().text()).distinct().collect(Collectors.joining("; "));
                out.report("Distances of " + String.join(", ", effects) + " are met by " + table.name() + ", but by a number that nobody checked: "
                        + rules.stream().map(Applied::words).collect(Collectors.joining("; ")))
                        .found(sources, "a number read in its document")
                        .basis(table.name() + ": " + sources)
                        .remedy("look it up in the edition in force, and write what it says as a table of your own")
                        .about(new Subject(List.copyOf(effects), List.of()))
                        .at(plan.script().show().source());
            });
        });
    }

    private static void add(Map<List<Applied>, Set<String>> met, Distances.Held held) {
        // In which direction it counts is looked at only where it matters.
        if (held.asked().anywhere(asked -> !unchecked(asked).isEmpty()) && held.check().holds()) {
            List<Applied> unchecked = unchecked(held.check().requirement());
            if (!unchecked.isEmpty()) {
                met.computeIfAbsent(unchecked, rules -> new LinkedHashSet<>()).add(held.cue().effect().name());
            }
        }
    }

    private static List<Applied> unchecked(Requirement asked) {
        return asked.applied().stream().filter(rule -> rule.changesNumber() && rule.citation().verification() == Verification.FROM_MEMORY).toList();
    }
}
