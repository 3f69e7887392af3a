package org.girandole.plan.allocate;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.girandole.plan.PlannedCue.Tube;

/** The racks of one position with what has been loaded so far, and what was refused. */
final class PositionLoad {
    private final List<RackTubes> racks;
    private final Map<Request, Tube> loaded;
    private final List<Request> refused;

    PositionLoad(List<RackTubes> racks) {
        this(racks.stream().map(RackTubes::copy).toList(), new LinkedHashMap<>(), new ArrayList<>());
    }

    private PositionLoad(List<RackTubes> racks, Map<Request, Tube> loaded, List<Request> refused) {
        this.racks = racks;
        this.loaded = loaded;
        this.refused = refused;
    }

    PositionLoad copy() {
        return new PositionLoad(racks.stream().map(RackTubes::copy).toList(), new LinkedHashMap<>(loaded), new ArrayList<>(refused));
    }

    List<RackTubes> racks() {
        return racks;
    }

    List<Request> refused() {
        return refused;
    }

    void refuse(Request request) {
        refused.add(request);
    }

    /** Loads of this allocation, without those written by hand. */
    Map<Request, Tube> loaded() {
        return loaded;
    }

    Map<String, Tube> tubes() {
        Map<String, Tube> tubes = new LinkedHashMap<>();
        loaded.forEach((request, tube) -> tubes.put(request.key(), tube));
        return tubes;
    }

    void put(Request request, RackTubes rack, int first) {
        rack.put(request, first);
        loaded.put(request, new Tube(rack.rack().name(), first, false));
    }

    /** Loads a request where it was; false when it does not fit there any more. */
    boolean keep(Request request, Tube tube) {
        for (RackTubes rack : racks) {
            if (rack.rack().name().equals(tube.rack()) && rack.fits(request, tube.tube())) {
                put(request, rack, tube.tube());
                return true;
            }
        }
        return false;
    }

    void remove(Request request) {
        if (loaded.remove(request) != null) {
            racks.forEach(rack -> rack.remove(request));
        }
    }
}
