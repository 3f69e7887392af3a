package org.girandole.plan.rules.loading;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.girandole.plan.Plan;
import org.girandole.plan.PlannedCue;
import org.girandole.plan.Severity;
import org.girandole.plan.Subject;
import org.girandole.plan.rules.Basis;
import org.girandole.plan.rules.Cues;
import org.girandole.plan.rules.Findings;
import org.girandole.plan.rules.Quantity;
import org.girandole.plan.rules.RuleInfo;
import org.girandole.plan.rules.ScriptIndex;
import org.girandole.plan.rules.SharingRule;
import org.girandole.plan.rules.Workings;
import org.girandole.plan.script.Rack;

/** A chain that shares its rack with anything else. */
public final class RackMixedChain implements SharingRule {
    private static final RuleInfo INFO = new RuleInfo("rack-mixed-chain", RuleInfo.Family.LOADING, Severity.WARNING,
            "A chain shares a rack with other shells.",
            "A chain cannot be stopped. If one of its shells bursts in its tube the rest goes on firing out of a wrecked "
                    + "rack, and what stands beside it is thrown about.",
            Basis.COMMON_PRACTICE);

    @Override
    public RuleInfo info() {
        return INFO;
    }

    @Override
    public void check(Workings workings, Findings out) {
        Plan plan = workings.plan();
        Map<String, List<PlannedCue>> byRack = new LinkedHashMap<>();
        for (PlannedCue cue : plan.cues()) {
            cue.tube().ifPresent(tube -> byRack.computeIfAbsent(tube.rack(), k -> new ArrayList<>()).add(cue));
        }
        ScriptIndex index = workings.index();
        byRack.forEach((name, cues) -> {
            Optional<PlannedCue> chain = cues.stream().filter(cue -> cue.chain().isPresent()).findFirst();
            if (chain.isEmpty() || cues.size() < 2) {
                return;
            }
            PlannedCue other = cues.stream().filter(cue -> cue != chain.get()).findFirst().orElseThrow();
            out.report("Chain " + Cues.name(chain.get()) + " shares rack " + name + " with " + Cues.name(other)
                    + (cues.size() > 2 ? " and " + Quantity.count(cues.size() - 2, "more cue", "more cues") : ""))
                    .found(Quantity.count(cues.size() - 1, "other cue", "other cues") + " in the rack", "the chain alone")
                    .remedy("give the chain a rack of its own")
                    .about(new Subject(List.of(chain.get().what(), name), index.rack(chain.get()).map(Rack::position).stream().toList()))
                    .data(Map.of("rack", name))
                    .at(Cues.tubeSource(chain.get()));
        });
    }
}
