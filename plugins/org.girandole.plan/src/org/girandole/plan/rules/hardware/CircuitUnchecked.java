package org.girandole.plan.rules.hardware;

import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.girandole.plan.Plan;
import org.girandole.plan.PlannedCue;
import org.girandole.plan.Severity;
import org.girandole.plan.Subject;
import org.girandole.plan.rules.Cues;
import org.girandole.plan.rules.Findings;
import org.girandole.plan.rules.RuleInfo;
import org.girandole.plan.rules.ScriptIndex;
import org.girandole.plan.rules.SharingRule;
import org.girandole.plan.rules.Workings;
import org.girandole.plan.script.Igniter;
import org.girandole.plan.script.ModuleType;
import org.girandole.plan.script.SourceRef;

/** Facts without which no current can be computed: of igniters, module types, wire and system in use. */
public final class CircuitUnchecked implements SharingRule {
    private static final RuleInfo INFO = new RuleInfo("circuit-unchecked", RuleInfo.Family.HARDWARE, Severity.ERROR,
            "The firing or test current could not be checked.",
            "A circuit that nobody has computed may fail to fire, or may fire during the test. Not knowing is not the same as "
                    + "safe.",
            "Ohm's law needs every part of the loop");

    @Override
    public RuleInfo info() {
        return INFO;
    }

    @Override
    public void check(Workings workings, Findings out) {
        Plan plan = workings.plan();
        ScriptIndex index = workings.index();
        Map<String, Igniter> igniters = new LinkedHashMap<>();
        Map<String, ModuleType> types = new LinkedHashMap<>();
        PlannedCue unsolved = null;
        for (PlannedCue cue : plan.cues()) {
            index.igniter(cue).ifPresent(igniter -> igniters.putIfAbsent(igniter.name(), igniter));
            index.moduleType(cue).ifPresent(type -> types.putIfAbsent(type.name(), type));
            if (unsolved == null && cue.pin().isPresent() && cue.circuit().isEmpty()) {
                unsolved = cue;
            }
        }
        int before = out.all().size();
        igniters.values().forEach(igniter -> missing(out, "igniter " + igniter.name(), Subject.of(igniter.name()), igniter.source(),
                fact("resistance", igniter.resistanceOhm()), fact("all-fire", igniter.allFireA()), fact("no-fire", igniter.noFireA())));
        types.values().forEach(type -> missing(out, "module type " + type.name(), Subject.of(type.name()), type.source(),
                fact("drive", type.driveV()), fact("source", type.sourceOhm()), fact("test", type.testA())));
        plan.script().firingSystem().filter(system -> !plan.cues().isEmpty()).ifPresent(system -> missing(out,
                "firing system " + system.name(), Subject.of(system.name()), system.source(), fact("lead", system.wire())));
        if (unsolved != null && out.all().size() == before) {
            out.report("The circuit of " + Cues.name(unsolved) + " could not be computed, so its current was not checked")
                    .found("no result", "a loop resistance and a current")
                    .remedy("see that its effect names an igniter and that the show names a firing system with a lead")
                    .about(Cues.subject(unsolved)).at(unsolved.source());
        }
    }

    private static String fact(String word, Optional<?> value) {
        return value.isPresent() ? "" : word;
    }

    private static void missing(Findings out, String what, Subject subject, SourceRef source, String... facts) {
        List<String> missing = Arrays.stream(facts).filter(fact -> !fact.isEmpty()).toList();
        if (!missing.isEmpty()) {
            out.report("The circuits with " + what + " were not checked: it does not give " + String.join(", ", missing))
                    .found("no " + String.join(", no ", missing), String.join(", ", missing))
                    .remedy("add " + String.join(", ", missing) + " to " + what + ", from the maker's data or a measurement")
                    .about(subject)
                    .data(Map.of("missing", String.join(",", missing)))
                    .at(source);
        }
    }
}
