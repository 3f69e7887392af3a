package org.girandole.plan.rules.hardware;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
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
import org.girandole.plan.script.FiringSystem;
import org.girandole.plan.script.Igniter;

/** A pin whose igniters may get less than the all-fire current with its margin, at the unlucky end of every tolerance. */
public final class CurrentTooLow implements SharingRule {
    private static final RuleInfo INFO = new RuleInfo("current-too-low", RuleInfo.Family.HARDWARE, Severity.ERROR,
            "An igniter may get too little current to fire for certain.",
            "It fires late, or not at all, and a loaded tube is left behind for the crew to unload.",
            "all-fire current of the igniter, times the firing system's margin");

    @Override
    public RuleInfo info() {
        return INFO;
    }

    @Override
    public void check(Workings workings, Findings out) {
        Plan plan = workings.plan();
        ScriptIndex index = workings.index();
        Map<Alike, List<PlannedCue>> weak = new LinkedHashMap<>();
        plan.script().firingSystem().ifPresent(system -> Pins.used(workings).forEach((pin, cues) -> {
            PlannedCue cue = cues.get(0);
            Optional<Double> wanted = wantedA(index, cue, system);
            if (wanted.isPresent() && cue.circuit().filter(circuit -> circuit.currentMinA() < wanted.get()).isPresent()) {
                Alike alike = new Alike(pin.module(), cue.position(), cue.effect().igniter().orElse(""), cues.size());
                weak.computeIfAbsent(alike, k -> new ArrayList<>()).add(cue);
            }
        }));
        weak.forEach((alike, cues) -> report(index, plan.script().firingSystem().orElseThrow(), alike, cues, out));
    }

    private static void report(ScriptIndex index, FiringSystem system, Alike alike, List<PlannedCue> cues, Findings out) {
        PlannedCue worst = cues.stream().min(Comparator.comparingDouble(cue -> cue.circuit().orElseThrow().currentMinA())).orElseThrow();
        PlannedCue.Circuit circuit = worst.circuit().orElseThrow();
        PlannedCue.Pin pin = worst.pin().orElseThrow();
        double wantedA = wantedA(index, worst, system).orElseThrow();
        Igniter igniter = index.igniter(worst).orElseThrow();
        out.report("Pin " + pin.pin() + " of module " + pin.module() + " may give " + Cues.name(worst) + " only "
                + Quantity.amperes(circuit.currentMinA())
                + (cues.size() > 1 ? "; so may " + Quantity.count(cues.size() - 1, "more pin", "more pins") + " like it" : ""))
                .found(Quantity.amperes(circuit.currentA()) + " each, " + Quantity.amperes(circuit.currentMinA()) + " at worst, with "
                        + Quantity.count(circuit.igniters(), "igniter", "igniters") + " and " + Quantity.metres(circuit.leadM()) + " of lead", "at least " + Quantity.amperes(wantedA))
                .basis(Basis.script("igniter " + igniter.name() + ", all-fire " + Quantity.amperes(igniter.allFireA().orElseThrow()),
                        igniter.source()) + ", times a margin of " + Quantity.number(system.currentMargin()))
                .remedy("use thicker or shorter lead, fewer igniters on the pin, or a module with more drive")
                .about(Cues.subject(worst, pin.module()))
                .data(Map.of("module", alike.module(), "wantedA", Double.toString(wantedA)))
                .at(Cues.pinSource(worst));
    }

    private static Optional<Double> wantedA(ScriptIndex index, PlannedCue cue, FiringSystem system) {
        return index.igniter(cue).flatMap(Igniter::allFireA).map(allFireA -> allFireA * system.currentMargin());
    }

    /** Pins that differ in nothing that matters for the current are told once. */
    private record Alike(String module, String position, String igniter, int igniters) {
    }
}
