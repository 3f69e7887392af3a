package org.girandole.plan.allocate;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.girandole.plan.PlannedCue.Pin;
import org.girandole.plan.PlannedCue.Tube;
import org.girandole.plan.allocate.PinProblem.Demand;
import org.girandole.plan.script.Rack;
import org.girandole.plan.script.ScoreItem.PinRef;
import org.jgrapht.alg.util.UnionFind;

/**
 * Gives igniters to pins. What is written by hand is law; what is remembered stays where it is still possible. The rest goes to as few modules
 * as possible, then by the shortest leads. Only when something would be refused are remembered firings moved, as few as possible.
 */
final class PinPlanner {
    private final Field field;
    private final Map<String, Tube> tubes;
    private final Map<String, Pin> pins = new LinkedHashMap<>();
    private final List<Request> refused = new ArrayList<>();
    private final Map<String, ModuleLoad> loads = new LinkedHashMap<>();
    private final Map<String, Integer> rackNumbers = new HashMap<>();

    PinPlanner(Field field, Map<String, Tube> tubes) {
        this.field = field;
        this.tubes = tubes;
        field.modules().forEach(stand -> loads.put(stand.name(), new ModuleLoad(stand)));
        field.racks().forEach(rack -> rackNumbers.put(rack.name(), rackNumbers.size()));
    }

    Map<String, Pin> pins() {
        return pins;
    }

    /** Requests without a pin, in the order given. */
    List<Request> refused() {
        return refused;
    }

    /** How many pins of each module are in use. */
    Map<String, Integer> usedPins() {
        Map<String, Integer> used = new LinkedHashMap<>();
        pins.values().stream().map(pin -> new PinRefName(pin.module(), pin.pin())).distinct()
                .forEach(pin -> used.merge(pin.module(), 1, Integer::sum));
        return used;
    }

    void allocate(List<Request> requests, Memory memory) {
        takeByHand(requests);
        Map<String, List<Request>> parts = new LinkedHashMap<>();
        UnionFind<String> connected = Parts.byModules(field, requests);
        requests.stream().filter(request -> request.pin().isEmpty())
                .forEach(request -> parts.computeIfAbsent(connected.find(request.position()), part -> new ArrayList<>()).add(request));
        Map<String, List<String>> modules = new HashMap<>();
        loads.forEach((name, load) -> load.stand().module().positions().stream().findFirst()
                .ifPresent(position -> modules.computeIfAbsent(connected.find(position), part -> new ArrayList<>()).add(name)));
        // No module serves two parts, so that these are solved side by side.
        parts.entrySet().parallelStream().map(part -> solved(modules.getOrDefault(part.getKey(), List.of()), part.getValue(), memory)).toList()
                .forEach(best -> {
                    best.commit();
                    refused.addAll(best.refused());
                });
        Map<Request, Integer> order = new HashMap<>();
        requests.forEach(request -> order.put(request, order.size()));
        refused.sort(Comparator.comparingInt(order::get));
    }

    private void takeByHand(List<Request> requests) {
        Map<PinRefName, Request> first = new HashMap<>();
        for (Request request : requests) {
            if (request.pin().isPresent()) {
                PinRef hand = request.pin().get();
                pins.put(request.key(), new Pin(hand.module(), hand.pin(), true));
                Request sharing = first.putIfAbsent(new PinRefName(hand.module(), hand.pin()), request);
                boolean sameMoment = sharing != null && sharing.slot() == request.slot() && sharing.fireUs() == request.fireUs();
                Optional.ofNullable(loads.get(hand.module()))
                        .ifPresent(load -> load.fix(hand.pin(), request.slot(), request.fireUs(), sameMoment));
            }
        }
    }

    /** A pin by name. */
    private record PinRefName(String module, int pin) {
    }

    private Part solved(List<String> modules, List<Request> requests, Memory memory) {
        Part kept = new Part(modules, loads);
        List<Request> open = new ArrayList<>();
        Map<Request, Pin> staying = kept.staying;
        for (Request request : requests) {
            Optional<Pin> pin = memory.pin(request).filter(p -> kept.keep(request, p));
            pin.ifPresentOrElse(p -> staying.put(request, p), () -> open.add(request));
        }
        Part best = kept.copy();
        best.solve(open, Map.of());
        if (!best.refused().isEmpty() && !staying.isEmpty()) {
            Part moving = new Part(modules, loads);
            moving.staying.putAll(staying);
            moving.solve(requests, staying);
            best = moving.refused().size() < best.refused().size() ? moving : best;
        }
        return best;
    }

    private Optional<Rack> rack(Request request) {
        return Optional.ofNullable(tubes.get(request.key())).map(Tube::rack).flatMap(field::rack);
    }

    /** One connected part of the field, being tried. */
    private final class Part {
        private final List<ModuleLoad> modules;
        private final Map<Request, Integer> moduleOf = new LinkedHashMap<>();
        private final Map<Request, Pin> numbered = new LinkedHashMap<>();
        private final List<Request> refusedHere = new ArrayList<>();
        /** Firings that are remembered and could stay, with the pins they had. */
        private final Map<Request, Pin> staying = new LinkedHashMap<>();

        Part(List<String> names, Map<String, ModuleLoad> loads) {
            this(names.stream().map(name -> loads.get(name).copy()).toList());
        }

        private Part(List<ModuleLoad> modules) {
            this.modules = modules;
        }

        Part copy() {
            Part copy = new Part(modules.stream().map(ModuleLoad::copy).toList());
            copy.numbered.putAll(numbered);
            copy.staying.putAll(staying);
            return copy;
        }

        List<Request> refused() {
            return refusedHere;
        }

        /** Leaves a firing on the pin it had; false when that is not possible any more. */
        boolean keep(Request request, Pin pin) {
            for (ModuleLoad load : modules) {
                boolean possible = load.stand().name().equals(pin.module()) && load.stand().module().positions().contains(request.position())
                        && load.isFree(pin.pin()) && load.room() > 0 && load.inTime(request);
                if (possible) {
                    load.fix(pin.pin(), request.slot(), request.fireUs(), false);
                    numbered.put(request, new Pin(pin.module(), pin.pin(), false));
                    return true;
                }
            }
            return false;
        }

        void solve(List<Request> open, Map<Request, Pin> remembered) {
            if (open.isEmpty()) {
                return;
            }
            List<Demand> demands = open.stream().map(request -> new Demand(request, rack(request), Optional.ofNullable(remembered.get(request))
                    .map(pin -> index(pin.module())).orElse(-1))).toList();
            PinProblem problem = new PinProblem(field, modules, demands);
            int[] assigned = new PinAssignment(problem, new OpenModules(problem).choose()).assign();
            for (int d = 0; d < assigned.length; d++) {
                if (assigned[d] < 0) {
                    refusedHere.add(open.get(d));
                } else {
                    moduleOf.put(open.get(d), assigned[d]);
                }
            }
        }

        private int index(String module) {
            for (int m = 0; m < modules.size(); m++) {
                if (modules.get(m).stand().name().equals(module)) {
                    return m;
                }
            }
            return -1;
        }

        /** Numbers the pins: firings that stay on their module keep their pin, the others follow the racks and their tubes. */
        void commit() {
            List<Request> unnumbered = new ArrayList<>();
            moduleOf.forEach((request, m) -> {
                Pin had = staying.get(request);
                if (had != null && had.module().equals(modules.get(m).stand().name())) {
                    modules.get(m).number(had.pin());
                    numbered.put(request, new Pin(had.module(), had.pin(), false));
                } else {
                    unnumbered.add(request);
                }
            });
            Map<Request, Integer> rackOrder = new HashMap<>();
            unnumbered.forEach(request -> rackOrder.put(request, rack(request).map(Rack::name).map(rackNumbers::get).orElse(rackNumbers.size())));
            unnumbered.sort(Comparator.comparingInt((Request request) -> rackOrder.get(request))
                    .thenComparingInt(request -> Optional.ofNullable(tubes.get(request.key())).map(Tube::tube).orElse(0)));
            for (Request request : unnumbered) {
                ModuleLoad load = modules.get(moduleOf.get(request));
                numbered.put(request, new Pin(load.stand().name(), load.number(), false));
            }
            numbered.forEach((request, pin) -> pins.put(request.key(), pin));
        }
    }
}
