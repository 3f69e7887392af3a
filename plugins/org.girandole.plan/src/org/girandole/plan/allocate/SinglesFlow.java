package org.girandole.plan.allocate;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.girandole.plan.PlannedCue.Aim;
import org.girandole.plan.PlannedCue.Tube;
import org.girandole.plan.script.ScoreItem.Lean;

/**
 * Single pieces to free tubes by a minimum cost flow. Pieces of one calibre and aim are interchangeable, and so are the tubes of one run of an
 * adjustable rack; a tube of a fixed fan stands for itself.
 */
final class SinglesFlow {
    private static final double REFUSED = 1e8;
    private static final double MOVED = 1e5;
    private static final double BESIDE_CHAIN = 1e3;

    private final PositionLoad load;
    private final Map<Kind, List<Request>> kinds = new LinkedHashMap<>();
    private final List<Group> groups = new ArrayList<>();
    private final Map<Request, Integer> order = new HashMap<>();
    private final boolean moving;

    /** What pieces have in common that fit the same tubes. */
    private record Kind(Optional<Double> calibreM, double tiltDeg, Lean lean) {
        static Kind of(Request request) {
            Aim aim = request.aim();
            return new Kind(request.calibreM(), aim.tiltDeg(), aim.lean());
        }
    }

    /** Tubes that the same pieces fit, lowest first, and the remembered load of the only one when loads may move. */
    private record Group(RackTubes rack, List<Integer> tubes, Request remembered, double cost) {
    }

    /** @param where remembered single pieces that may get other tubes, with the tubes they had; {@code load} is without them */
    SinglesFlow(PositionLoad load, List<Request> singles, Map<Request, Tube> where) {
        this.load = load;
        this.moving = !where.isEmpty();
        singles.forEach(request -> order.put(request, order.size()));
        singles.forEach(request -> kinds.computeIfAbsent(Kind.of(request), kind -> new ArrayList<>()).add(request));
        Map<Tube, Request> remembered = new LinkedHashMap<>();
        where.forEach((request, tube) -> remembered.put(tube, request));
        List<RackTubes> racks = load.racks();
        for (int i = 0; i < racks.size(); i++) {
            group(racks.get(i), i, remembered);
        }
    }

    private void group(RackTubes rack, int order, Map<Tube, Request> remembered) {
        double cost = order + (rack.hasChain() ? BESIDE_CHAIN : 0);
        Map<Integer, List<Integer>> runs = new LinkedHashMap<>();
        for (int tube = 1; tube <= rack.tubes(); tube++) {
            if (!rack.isFree(tube)) {
                continue;
            }
            Request here = remembered.get(new Tube(rack.rack().name(), tube, false));
            if (moving && here != null || rack.rack().fixedFan()) {
                groups.add(new Group(rack, List.of(tube), here, cost));
            } else {
                runs.computeIfAbsent(rack.runOf(tube), run -> new ArrayList<>()).add(tube);
            }
        }
        runs.values().forEach(tubes -> groups.add(new Group(rack, tubes, null, cost)));
    }

    /** Loads the pieces; those without a tube are refused in {@code load}. */
    void place() {
        FlowNetwork network = new FlowNetwork();
        int source = network.node();
        int sink = network.node();
        int[] groupNodes = groups.stream().mapToInt(group -> {
            int node = network.node();
            network.arc(node, sink, group.tubes().size(), 0);
            return node;
        }).toArray();
        Map<Kind, int[]> arcs = new LinkedHashMap<>();
        kinds.forEach((kind, requests) -> {
            int node = network.node();
            network.arc(source, node, requests.size(), 0);
            network.arc(node, sink, requests.size(), REFUSED);
            int[] toGroups = new int[groups.size()];
            for (int i = 0; i < groups.size(); i++) {
                Group group = groups.get(i);
                boolean suits = group.rack().suits(requests.get(0), group.tubes().get(0));
                toGroups[i] = suits ? network.arc(node, groupNodes[i], group.tubes().size(), cost(kind, group)) : -1;
            }
            arcs.put(kind, toGroups);
        });
        int[] flow = network.solve(source, sink, kinds.values().stream().mapToInt(List::size).sum());
        List<List<Request>> given = groups.stream().map(group -> (List<Request>) new ArrayList<Request>()).toList();
        kinds.forEach((kind, requests) -> give(requests, arcs.get(kind), flow, given));
        for (int i = 0; i < groups.size(); i++) {
            Group group = groups.get(i);
            List<Request> inOrder = given.get(i);
            inOrder.sort(Comparator.comparingInt(order::get));
            for (int k = 0; k < inOrder.size(); k++) {
                load.put(inOrder.get(k), group.rack(), group.tubes().get(k));
            }
        }
    }

    private double cost(Kind kind, Group group) {
        double away = group.rack().rack().fixedFan()
                ? Math.abs(Fit.fanDeg(group.rack().rack(), group.tubes().get(0)) - kind.tiltDeg()) / 100 : 0;
        boolean stays = group.remembered() != null && Kind.of(group.remembered()).equals(kind);
        return group.cost() + away + (moving && !stays ? MOVED : 0);
    }

    /** Remembered pieces stay where their kind still has a tube; the others follow in their order, group by group. */
    private void give(List<Request> requests, int[] arcs, int[] flow, List<List<Request>> given) {
        Set<Request> waiting = new LinkedHashSet<>(requests);
        int[] room = new int[arcs.length];
        for (int i = 0; i < arcs.length; i++) {
            room[i] = arcs[i] < 0 ? 0 : flow[arcs[i]];
            Request remembered = groups.get(i).remembered();
            if (room[i] > 0 && remembered != null && waiting.remove(remembered)) {
                given.get(i).add(remembered);
                room[i]--;
            }
        }
        int group = 0;
        for (Request request : waiting) {
            while (group < room.length && room[group] == 0) {
                group++;
            }
            if (group == room.length) {
                load.refuse(request);
            } else {
                given.get(group).add(request);
                room[group]--;
            }
        }
    }
}
