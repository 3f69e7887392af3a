package org.girandole.plan.allocate;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.jgrapht.alg.util.UnionFind;

/** The parts of a field between which nothing is shared: no module, no rack, and nothing written by hand that reaches from one to the other. */
public final class Parts {
    private Parts() {
    }

    /** The numbers of the requests of each part, in their order; parts in the order of their first request. */
    public static List<List<Integer>> of(Field field, List<Request> requests) {
        UnionFind<String> connected = byModules(field, requests);
        for (Request request : requests) {
            request.pin().flatMap(pin -> field.module(pin.module())).flatMap(stand -> stand.module().positions().stream().findFirst())
                    .ifPresent(position -> connected.union(request.position(), position));
            request.tube().flatMap(tube -> field.rack(tube.rack())).ifPresent(rack -> connected.union(request.position(), rack.position()));
        }
        Map<String, List<Integer>> parts = new LinkedHashMap<>();
        for (int i = 0; i < requests.size(); i++) {
            parts.computeIfAbsent(connected.find(requests.get(i).position()), part -> new ArrayList<>()).add(i);
        }
        return List.copyOf(parts.values());
    }

    /** All positions; those that share a module, directly or by way of others, belong together. */
    static UnionFind<String> byModules(Field field, List<Request> requests) {
        Set<String> positions = new LinkedHashSet<>();
        requests.forEach(request -> positions.add(request.position()));
        field.modules().forEach(stand -> positions.addAll(stand.module().positions()));
        field.racks().forEach(rack -> positions.add(rack.position()));
        UnionFind<String> connected = new UnionFind<>(positions);
        field.modules().forEach(stand -> stand.module().positions()
                .forEach(position -> connected.union(stand.module().positions().get(0), position)));
        return connected;
    }
}
