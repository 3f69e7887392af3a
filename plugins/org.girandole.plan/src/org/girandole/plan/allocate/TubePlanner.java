package org.girandole.plan.allocate;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.girandole.plan.PlannedCue.Tube;
import org.girandole.plan.script.ScoreItem.TubeRef;

/**
 * Gives pieces to tubes, position by position. What is written by hand is law; what is remembered stays where it still fits. Chains get tubes
 * in a row, as far as possible in racks of their own; single pieces follow by a minimum cost flow, so that as many as possible get a tube.
 * Only when something cannot be placed are remembered loads moved, as few as possible.
 */
final class TubePlanner {
    private final Field field;
    private final Map<String, Tube> tubes = new LinkedHashMap<>();
    private final List<Request> refused = new ArrayList<>();

    TubePlanner(Field field) {
        this.field = field;
    }

    Map<String, Tube> tubes() {
        return tubes;
    }

    /** Requests without a tube, in the order given. */
    List<Request> refused() {
        return refused;
    }

    void allocate(List<Request> requests, Memory memory) {
        Map<String, List<RackTubes>> racks = new LinkedHashMap<>();
        Map<String, RackTubes> byName = new LinkedHashMap<>();
        Map<String, List<Request>> wanted = new LinkedHashMap<>();
        for (Request request : requests) {
            if (request.tube().isPresent()) {
                TubeRef hand = request.tube().get();
                tubes.put(request.key(), new Tube(hand.rack(), hand.tube(), true));
                field.rack(hand.rack()).ifPresent(rack -> byName.computeIfAbsent(rack.name(), name -> new RackTubes(rack))
                        .put(request, hand.tube()));
            } else if (request.needsTube()) {
                wanted.computeIfAbsent(request.position(), position -> new ArrayList<>()).add(request);
            }
        }
        wanted.keySet().forEach(position -> racks.put(position, field.racksAt(position).stream()
                .map(rack -> byName.computeIfAbsent(rack.name(), name -> new RackTubes(rack))).toList()));
        // No rack stands at two positions, so that these are loaded side by side.
        wanted.entrySet().parallelStream().map(here -> loaded(racks.get(here.getKey()), here.getValue(), memory)).toList().forEach(best -> {
            tubes.putAll(best.tubes());
            refused.addAll(best.refused());
        });
    }

    private static PositionLoad loaded(List<RackTubes> racks, List<Request> requests, Memory memory) {
        PositionLoad kept = new PositionLoad(racks);
        List<Request> open = new ArrayList<>();
        for (Request request : requests) {
            if (!memory.tube(request).filter(tube -> kept.keep(request, tube)).isPresent()) {
                open.add(request);
            }
        }
        PositionLoad best = place(kept.copy(), open);
        boolean anythingKept = open.size() < requests.size();
        if (!best.refused().isEmpty() && anythingKept) {
            PositionLoad moved = placeMoving(kept, open);
            best = moved.refused().size() < best.refused().size() ? moved : best;
        }
        if (!best.refused().isEmpty() && anythingKept) {
            PositionLoad fresh = place(new PositionLoad(racks), requests);
            best = fresh.refused().size() < best.refused().size() ? fresh : best;
        }
        return best;
    }

    /** Chains first, longest first, then single pieces. */
    private static PositionLoad place(PositionLoad start, List<Request> open) {
        List<Request> chains = chains(open);
        List<Request> singles = singles(open);
        return new ChainSearch(singles, false).place(start, chains);
    }

    /** As {@link #place}, but single pieces that are remembered may be moved. */
    private static PositionLoad placeMoving(PositionLoad start, List<Request> open) {
        return new ChainSearch(singles(open), true).place(start.copy(), chains(open));
    }

    private static List<Request> chains(List<Request> open) {
        return open.stream().filter(request -> request.pieces() > 1).sorted(Comparator.comparingInt(Request::pieces).reversed()).toList();
    }

    private static List<Request> singles(List<Request> open) {
        return open.stream().filter(request -> request.pieces() == 1).toList();
    }
}
