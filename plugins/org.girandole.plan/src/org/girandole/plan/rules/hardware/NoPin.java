package org.girandole.plan.rules.hardware;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.girandole.plan.Plan;
import org.girandole.plan.PlannedCue;
import org.girandole.plan.Severity;
import org.girandole.plan.Times;
import org.girandole.plan.rules.Cues;
import org.girandole.plan.rules.Findings;
import org.girandole.plan.rules.Quantity;
import org.girandole.plan.rules.RuleInfo;
import org.girandole.plan.rules.ScriptIndex;
import org.girandole.plan.rules.SharingRule;
import org.girandole.plan.rules.Workings;
import org.girandole.plan.script.Module;
import org.girandole.plan.script.SourceRef;

/** Shots that got no pin. Said once for each line and position. */
public final class NoPin implements SharingRule {
    private static final RuleInfo INFO = new RuleInfo("no-pin", RuleInfo.Family.HARDWARE, Severity.ERROR,
            "A cue has no pin.",
            "What is on no pin is not fired.",
            "every igniter needs a pin");

    @Override
    public RuleInfo info() {
        return INFO;
    }

    @Override
    public void check(Workings workings, Findings out) {
        Plan plan = workings.plan();
        Map<Line, List<PlannedCue>> lines = new LinkedHashMap<>();
        for (PlannedCue cue : plan.cues()) {
            if (cue.pin().isEmpty()) {
                lines.computeIfAbsent(new Line(cue.source(), cue.position()), k -> new ArrayList<>()).add(cue);
            }
        }
        if (lines.isEmpty()) {
            return;
        }
        Map<String, Integer> free = freePins(workings);
        lines.forEach((line, cues) -> {
            PlannedCue cue = cues.get(0);
            int left = free.getOrDefault(line.position(), 0);
            out.report(Cues.name(cue) + (cues.size() > 1 ? " and " + (cues.size() - 1) + " more of its line" : "")
                    + " got no pin at " + line.position())
                    .found("no pin; " + Quantity.count(left, "pin is", "pins are") + " free at " + line.position() + " besides the spare ones"
                            + (left >= cues.size() ? ", but none may fire at " + Times.exactClock(cue.timing().fireUs())
                                    + " within pins at once and pin gap" : ""),
                            Quantity.count(cues.size(), "pin", "pins"))
                    .remedy("add a module that serves " + line.position() + " with at least "
                            + Quantity.count(cues.size(), "free pin", "free pins"))
                    .about(Cues.subject(cue))
                    .data(Map.of("position", line.position(), "pins", Integer.toString(cues.size())))
                    .at(cue.source());
        });
    }

    private static Map<String, Integer> freePins(Workings workings) {
        ScriptIndex index = workings.index();
        Map<String, Integer> used = new HashMap<>();
        Pins.used(workings).keySet().forEach(pin -> used.merge(pin.module(), 1, Integer::sum));
        Map<String, Integer> free = new HashMap<>();
        for (Module module : workings.plan().script().modules()) {
            int left = index.typeOf(module).map(type -> type.pins() - type.sparePins() - used.getOrDefault(module.name(), 0)).orElse(0);
            module.positions().forEach(position -> free.merge(position, Math.max(0, left), Integer::sum));
        }
        return free;
    }

    private record Line(SourceRef source, String position) {
    }
}
