package org.girandole.plan.rules.distance;

import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
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
        Ground ground = Ground.of(plan);
        plan.script().separationTable().ifPresent(table -> {
            Map<String, Met> met = new LinkedHashMap<>();
            Distances.each(workings, ground, ground.audience(), place -> table, held -> add(met, held));
            Distances.each(workings, ground, ground.protectedPlaces(), place -> Protect.times(table, place), held -> add(met, held));
            met.forEach((text, found) -> out.report("Distances of " + String.join(", ", found.effects()) + " are met by " + table.name()
                    + ", but by a number that nobody checked: " + text)
                    .found(found.asked().citation().text(), "a number read in its document")
                    .basis(table.name() + ": " + found.asked().citation().text())
                    .remedy("look it up in the edition in force, and write what it says as a table of your own")
                    .about(new Subject(List.copyOf(found.effects()), List.of()))
                    .at(plan.script().show().source()));
        });
    }

    private static void add(Map<String, Met> met, Distances.Held held) {
        Requirement asked = held.check().requirement();
        if (held.check().holds() && asked.citation().verification() == Verification.FROM_MEMORY) {
            met.computeIfAbsent(asked.ruleText(), text -> new Met(asked, new LinkedHashSet<>())).effects().add(held.cue().effect().name());
        }
    }

    private record Met(Requirement asked, Set<String> effects) {
    }
}
