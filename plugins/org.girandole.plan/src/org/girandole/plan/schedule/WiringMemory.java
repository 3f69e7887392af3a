package org.girandole.plan.schedule;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.girandole.plan.PlannedCue.Circuit;
import org.girandole.plan.PlannedCue.Pin;
import org.girandole.plan.PlannedCue.Tube;
import org.girandole.plan.allocate.Memory;
import org.girandole.plan.allocate.Request;
import org.girandole.plan.script.FiringSystem;
import org.girandole.plan.script.Igniter;
import org.girandole.plan.script.Module;
import org.girandole.plan.script.ModuleType;
import org.girandole.plan.script.Rack;
import org.girandole.plan.script.ShowScript;
import org.girandole.plan.script.Site;
import org.girandole.plan.script.Wire;

/**
 * The pins, tubes and circuits of one show as they were planned last, for a program that plans at each key press. A part of the field of which
 * the same is wanted gets the same. Not for several threads at once.
 */
public final class WiringMemory {
    private Frame frame;
    private Map<List<Wish>, Part> kept = Map.of();

    /** What a firing wants. */
    record Wish(Request request, Optional<String> igniter) {
    }

    /** What it gets. */
    record Wired(Optional<Pin> pin, Optional<Tube> tube, Optional<Circuit> circuit) {
    }

    /** A part of the field: what is wanted in it, and what is given, in the same order. */
    record Part(List<Wish> wishes, List<Wired> wired) {
    }

    /** All that this hangs on beside what is wanted. */
    private record Frame(Memory lock, Optional<Site> site, List<Igniter> igniters, List<Wire> wires, List<ModuleType> types,
            List<Module> modules, List<Rack> racks, Optional<FiringSystem> system) {
        static Frame of(ShowScript script, Memory lock) {
            return new Frame(lock, script.site(), script.igniters(), script.wires(), script.moduleTypes(), script.modules(), script.racks(),
                    script.firingSystem());
        }
    }

    /** What is known of the parts of this show's field. What was remembered of another field is forgotten. */
    Map<List<Wish>, Part> of(ShowScript script, Memory lock) {
        Frame now = Frame.of(script, lock);
        if (!now.equals(frame)) {
            frame = now;
            kept = Map.of();
        }
        return kept;
    }

    /** Remembers the parts of the field asked for last, and nothing else. */
    void keep(List<Part> parts) {
        Map<List<Wish>, Part> now = new HashMap<>();
        parts.forEach(part -> now.put(part.wishes, part));
        kept = now;
    }
}
