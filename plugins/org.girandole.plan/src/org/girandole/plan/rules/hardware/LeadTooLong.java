package org.girandole.plan.rules.hardware;

import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;
import org.girandole.plan.Plan;
import org.girandole.plan.PlannedCue;
import org.girandole.plan.Severity;
import org.girandole.plan.rules.Basis;
import org.girandole.plan.rules.Cues;
import org.girandole.plan.rules.Findings;
import org.girandole.plan.rules.Quantity;
import org.girandole.plan.rules.RuleInfo;
import org.girandole.plan.rules.ScriptIndex;
import org.girandole.plan.rules.SharingRule;
import org.girandole.plan.rules.Workings;
import org.girandole.plan.script.ModuleType;

/** A lead longer than the module allows. Said once for each module and position. */
public final class LeadTooLong implements SharingRule {
    private static final RuleInfo INFO = new RuleInfo("lead-too-long", RuleInfo.Family.HARDWARE, Severity.ERROR,
            "A lead is longer than its module allows.",
            "Every metre of lead costs current, and picks up what other wires send out.",
            "the script's module type");

    @Override
    public RuleInfo info() {
        return INFO;
    }

    @Override
    public void check(Workings workings, Findings out) {
        Plan plan = workings.plan();
        ScriptIndex index = workings.index();
        Map<Run, PlannedCue> longest = new LinkedHashMap<>();
        for (PlannedCue cue : plan.cues()) {
            Optional<Double> limitM = index.moduleType(cue).flatMap(ModuleType::longestLeadM);
            if (limitM.isPresent() && cue.circuit().filter(circuit -> circuit.leadM() > limitM.get()).isPresent()) {
                longest.merge(new Run(cue.pin().orElseThrow().module(), cue.position()), cue,
                        (a, b) -> leadM(b) > leadM(a) ? b : a);
            }
        }
        longest.forEach((run, cue) -> {
            ModuleType type = index.moduleType(cue).orElseThrow();
            double limitM = type.longestLeadM().orElseThrow();
            out.report("The lead from module " + run.module() + " to " + run.position() + " is " + Quantity.metres(leadM(cue)) + " long")
                    .found(Quantity.metres(leadM(cue)), "at most " + Quantity.metres(limitM))
                    .basis(Basis.script("module type " + type.name() + ", lead at most " + Quantity.metres(limitM), type.source()))
                    .remedy("set a module nearer to " + run.position())
                    .about(Cues.subject(cue, run.module()))
                    .data(Map.of("module", run.module(), "position", run.position()))
                    .at(Cues.pinSource(cue));
        });
    }

    private static double leadM(PlannedCue cue) {
        return cue.circuit().orElseThrow().leadM();
    }

    private record Run(String module, String position) {
    }
}
