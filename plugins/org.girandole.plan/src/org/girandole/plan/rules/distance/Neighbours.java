package org.girandole.plan.rules.distance;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.girandole.physics.geometry.Point2;
import org.girandole.physics.separation.DistanceTable;
import org.girandole.physics.separation.FiringCase;
import org.girandole.physics.separation.SeparationCheck;
import org.girandole.plan.fallout.FalloutAreas;
import org.girandole.plan.rules.Workings;

/** What else is fired from a position, and would move with it. Worked out once for all positions, when the first of them is asked for. */
final class Neighbours {
    private final Workings workings;
    private final Ground ground;
    private final Map<String, List<FalloutAreas.Area>> areas = new HashMap<>();
    private Map<String, Set<Met>> distances;

    Neighbours(Workings workings, Ground ground, List<FalloutAreas.Area> all) {
        this.workings = workings;
        this.ground = ground;
        all.forEach(area -> areas.computeIfAbsent(area.first().position(), position -> new ArrayList<>()).add(area));
    }

    /** What comes down from the position. */
    List<FalloutAreas.Area> areas(String position) {
        return areas.getOrDefault(position, List.of());
    }

    /** The distances that are met from the position, and should be met from wherever it is moved to. */
    Set<Met> distances(String position) {
        if (distances == null) {
            distances = new HashMap<>();
            workings.plan().script().separationTable().ifPresent(table -> {
                Distances.each(workings, ground.audience(), place -> table, this::keep);
                Distances.each(workings, ground.protectedPlaces(), place -> Protect.times(table, place), this::keep);
            });
        }
        return distances.getOrDefault(position, Set.of());
    }

    private void keep(Distances.Held held) {
        if (held.check().holds()) {
            distances.computeIfAbsent(held.cue().position(), position -> new LinkedHashSet<>())
                    .add(new Met(held.table(), held.firing(), held.at(), held.place()));
        }
    }

    /** A distance that is met. */
    record Met(DistanceTable table, FiringCase firing, Point2 at, Ground.Place place) {
        /** Whether it still is when fired from elsewhere. */
        boolean from(Point2 elsewhere) {
            return SeparationCheck.of(table, firing, elsewhere, place.shape()).holds();
        }
    }
}
