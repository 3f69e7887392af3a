package org.girandole.plan.rules.hardware;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.girandole.plan.Plan;
import org.girandole.plan.Severity;
import org.girandole.plan.Subject;
import org.girandole.plan.rules.Basis;
import org.girandole.plan.rules.Findings;
import org.girandole.plan.rules.Rule;
import org.girandole.plan.rules.RuleInfo;
import org.girandole.plan.script.FiringSystem;

/** A show without a firing system, or one that leaves its step, its latency or its clock open. */
public final class FiringSystemMissing implements Rule {
    private static final RuleInfo INFO = new RuleInfo("firing-system-missing", RuleInfo.Family.HARDWARE, Severity.WARNING,
            "Nothing says how the firing system keeps time.",
            "Every firing time is rounded to the system's step and shifted by its latency. Unknown, they count as nought and "
                    + "the times are off.",
            Basis.COMMON_PRACTICE);

    @Override
    public RuleInfo info() {
        return INFO;
    }

    @Override
    public void check(Plan plan, Findings out) {
        if (plan.cues().isEmpty()) {
            return;
        }
        Optional<FiringSystem> system = plan.script().firingSystem();
        if (system.isEmpty()) {
            out.report("The show names no firing system, so firing times know neither its step nor its latency")
                    .found("no firing system", "a firing system with step, latency and clock")
                    .remedy("describe the controller in a 'firing system' and name it in the show")
                    .at(plan.script().show().source());
            return;
        }
        List<String> missing = new ArrayList<>();
        if (system.get().stepUs().isEmpty()) {
            missing.add("step");
        }
        if (system.get().latencyUs().isEmpty()) {
            missing.add("latency");
        }
        if (system.get().clockPpm().isEmpty()) {
            missing.add("clock");
        }
        if (!missing.isEmpty()) {
            out.report("Firing system " + system.get().name() + " does not give " + String.join(", ", missing)
                    + "; what is missing counts as nought")
                    .found("no " + String.join(", no ", missing), "a value from the maker, or measured")
                    .remedy("add " + String.join(", ", missing) + " to firing system " + system.get().name())
                    .about(Subject.of(system.get().name()))
                    .data(Map.of("missing", String.join(",", missing)))
                    .at(system.get().source());
        }
    }
}
