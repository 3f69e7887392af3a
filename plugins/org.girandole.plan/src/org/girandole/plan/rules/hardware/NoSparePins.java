package org.girandole.plan.rules.hardware;

import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.girandole.plan.Severity;
import org.girandole.plan.Subject;
import org.girandole.plan.rules.Basis;
import org.girandole.plan.rules.Findings;
import org.girandole.plan.rules.Quantity;
import org.girandole.plan.rules.RuleInfo;
import org.girandole.plan.rules.ScriptIndex;
import org.girandole.plan.rules.SharingRule;
import org.girandole.plan.rules.Workings;

/** A module with fewer free pins than wanted; one is wanted even where the type says nothing. */
public final class NoSparePins implements SharingRule {
    private static final RuleInfo INFO = new RuleInfo("no-spare-pins", RuleInfo.Family.HARDWARE, Severity.WARNING,
            "A module has too few pins left free.",
            "A pin that fails its test on the night has to be moved to another one on the same module, or its cue is lost.",
            "one free pin a module: " + Basis.COMMON_PRACTICE);

    @Override
    public RuleInfo info() {
        return INFO;
    }

    @Override
    public void check(Workings workings, Findings out) {
        ScriptIndex index = workings.index();
        Map<String, Set<Integer>> used = new LinkedHashMap<>();
        Pins.used(workings).keySet().forEach(pin -> used.computeIfAbsent(pin.module(), k -> new HashSet<>()).add(pin.pin()));
        used.forEach((name, pins) -> index.module(name).ifPresent(module -> index.typeOf(module).ifPresent(type -> {
            int wanted = Math.max(1, type.sparePins());
            int free = Math.max(0, type.pins() - pins.size());
            if (free < wanted) {
                out.report("Module " + name + " has " + (free == 0 ? "no pin" : "only " + Quantity.count(free, "pin", "pins"))
                        + " left free")
                        .found(Quantity.count(free, "free pin", "free pins") + " of " + type.pins(), "at least " + wanted)
                        .basis(type.sparePins() > 0
                                ? Basis.script("module type " + type.name() + ", spare pins " + type.sparePins(), type.source())
                                : INFO.basis())
                        .remedy("add a module, or move " + Quantity.count(wanted - free, "cue", "cues") + " to another one")
                        .about(new Subject(List.of(name), module.positions()))
                        .data(Map.of("module", name, "free", Integer.toString(free)))
                        .at(module.source());
            }
        })));
    }
}
