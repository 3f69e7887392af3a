package org.girandole.plan.rules.distance;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.girandole.physics.geometry.Point2;
import org.girandole.physics.separation.DistanceTable;
import org.girandole.physics.separation.Requirement;
import org.girandole.plan.Plan;
import org.girandole.plan.PlannedCue;
import org.girandole.plan.rules.Workings;

/**
 * What the show's distance table asks from each position to each audience line and protected place, met or not: for drawing and for
 * reading. Whether it is met is for the rules to say.
 *
 * @param table the table that the show names; empty when it names none or one that is not there, and then nothing was looked at
 * @param lines one a position and place, for the firing that asks most; by place, then position, in the order of the site; none from where
 *        nothing may be computed
 */
public record AskedDistances(Optional<DistanceTable> table, List<Line> lines) {
    public AskedDistances {
        lines = List.copyOf(lines);
    }

    /**
     * One position and one place.
     *
     * @param audience whether the place is an audience line; else it is a protected place
     * @param cue the firing that asks most; one that needs an assessment asks more than any number
     * @param foundM metres from where it is fired to the place
     * @param from where it is fired
     * @param to the nearest point of the place, in the direction that is worst
     */
    public record Line(String position, String place, boolean audience, PlannedCue cue, Requirement asked, double foundM,
            Point2 from, Point2 to) {
        private boolean asksMoreThan(Line other) {
            if (asked.assessmentNeeded() || other.asked.assessmentNeeded()) {
                return asked.assessmentNeeded() && !other.asked.assessmentNeeded();
            }
            return asked.metres().getAsDouble() > other.asked.metres().getAsDouble();
        }
    }

    /** What is asked for a plan. */
    public static AskedDistances of(Workings workings) {
        Plan plan = workings.plan();
        Optional<DistanceTable> table = plan.script().separationTable();
        if (table.isEmpty()) {
            return new AskedDistances(table, List.of());
        }
        Ground ground = Ground.of(workings);
        Map<List<String>, Line> most = new LinkedHashMap<>();
        plan.script().site().ifPresent(site -> ordered(ground, site.positions().stream().map(position -> position.name()).toList())
                .forEach(key -> most.put(key, null)));
        Distances.each(workings, ground.audience(), place -> table.get(), held -> add(most, held, true));
        Distances.each(workings, ground.protectedPlaces(), place -> Protect.times(table.get(), place), held -> add(most, held, false));
        List<Line> lines = new ArrayList<>(most.values());
        lines.removeIf(line -> line == null);
        return new AskedDistances(table, lines);
    }

    private static void add(Map<List<String>, Line> most, Distances.Held held, boolean audience) {
        Line line = new Line(held.cue().position(), held.place().name(), audience, held.cue(), held.check().requirement(), held.check().foundM(),
                held.at(), held.check().at());
        most.merge(key(audience, line.place(), line.position()), line, (a, b) -> b.asksMoreThan(a) ? b : a);
    }

    private static List<List<String>> ordered(Ground ground, List<String> positions) {
        List<List<String>> keys = new ArrayList<>();
        ground.audience().forEach(place -> positions.forEach(position -> keys.add(key(true, place.name(), position))));
        ground.protectedPlaces().forEach(place -> positions.forEach(position -> keys.add(key(false, place.name(), position))));
        return keys;
    }

    private static List<String> key(boolean audience, String place, String position) {
        return List.of(audience ? "audience" : "protected", place, position);
    }
}
