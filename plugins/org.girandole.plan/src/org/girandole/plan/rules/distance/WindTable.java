package org.girandole.plan.rules.distance;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.stream.IntStream;
import org.girandole.physics.wind.CriticalWind;
import org.girandole.plan.Plan;
import org.girandole.plan.fallout.FlightMemory;
import org.girandole.plan.rules.Quantity;
import org.girandole.plan.rules.Workings;

/**
 * How a plan fares in rising wind from one direction: up to which wind each position, and the show as a whole, is clean, and how each fares
 * at round speeds. Steady wind, without gusts. What somebody agreed to in a waiver counts as clean, in whatever wind that was.
 *
 * @param fromDeg where the wind comes from, degrees clockwise from +y
 * @param whole of all positions together
 * @param rows one a position that something is fired from, in the order of the site
 */
public record WindTable(double fromDeg, CriticalWind whole, List<Row> rows) {
    /** The speeds of the table, m/s. */
    public static final List<Integer> SPEEDS_MPS = IntStream.rangeClosed(0, (int) SiteInWind.STRONGEST_MPS / 2).mapToObj(i -> 2 * i).toList();
    private static final int TENTHS = 10;
    private static final double NEVER = -1;

    public WindTable {
        rows = List.copyOf(rows);
    }

    /**
     * One position.
     *
     * @param bears the wind up to which nothing is found here that nobody agreed to
     * @param states how it fares at {@link #SPEEDS_MPS}
     */
    public record Row(String position, CriticalWind bears, List<SiteInWind.State> states) {
        public Row {
            states = List.copyOf(states);
        }

        /** Whether something here could not be checked, so that nobody knows what wind it bears. */
        public boolean unchecked() {
            return states.contains(SiteInWind.State.UNCHECKED);
        }

        /** The wind up to which it is clean, in words. */
        public String upTo() {
            if (unchecked()) {
                return "not known";
            }
            return bears.cleanUpToMps().isEmpty() ? "never"
                    : Quantity.number(bears.cleanUpToMps().getAsDouble()) + " m/s" + (bears.limitReached() ? " or more" : "");
        }
    }

    /** What the show as a whole bears, as one sentence. */
    public String sentence() {
        List<String> unchecked = rows.stream().filter(Row::unchecked).map(Row::position).toList();
        if (!unchecked.isEmpty()) {
            return "How much wind the show bears is not known: not everything could be checked at " + String.join(", ", unchecked) + ".";
        }
        String because = String.join(", ", whole.brokenBy());
        if (whole.cleanUpToMps().isEmpty()) {
            return "Not clean even without wind, because of " + because + ".";
        }
        return "C" + whole.text().substring(1)
                + (whole.limitReached() ? "." : "; in stronger wind no longer, first because of " + because + ".");
    }

    /** Whether anything is clean only because somebody agreed to what is found. */
    public boolean waived() {
        return rows.stream().anyMatch(row -> row.states().contains(SiteInWind.State.WAIVED));
    }

    /** The table for wind from {@code fromDeg}. Nothing that is fired at one position changes what is found at another. */
    public static WindTable of(Plan plan, double fromDeg) {
        FlightMemory flights = new FlightMemory();
        List<Row> rows = SiteInWind.positions(plan).parallelStream()
                .map(position -> row(new Workings(alone(plan, position), flights), position, fromDeg)).toList();
        return new WindTable(fromDeg, whole(rows, fromDeg), rows);
    }

    private static Plan alone(Plan plan, String position) {
        return new Plan(plan.script(), plan.stamp(), plan.soundtracks(), plan.cues().stream().filter(cue -> cue.position().equals(position)).toList(),
                plan.troubles());
    }

    private static Row row(Workings alone, String position, double fromDeg) {
        Map<Integer, SiteInWind> tried = new HashMap<>();
        CriticalWind bears = CriticalWind.find(fromDeg, SiteInWind.STRONGEST_MPS, (from, speed) -> in(tried, alone, from, speed).brokenAt(position));
        return new Row(position, bears, SPEEDS_MPS.stream().map(speed -> in(tried, alone, fromDeg, speed).state(position)).toList());
    }

    private static SiteInWind in(Map<Integer, SiteInWind> tried, Workings alone, double fromDeg, double speedMps) {
        return tried.computeIfAbsent((int) Math.round(speedMps * TENTHS), tenths -> SiteInWind.of(alone, fromDeg, speedMps));
    }

    /** The show bears what its weakest position bears. */
    private static CriticalWind whole(List<Row> rows, double fromDeg) {
        double least = rows.stream().mapToDouble(row -> row.bears().cleanUpToMps().orElse(NEVER)).min().orElse(SiteInWind.STRONGEST_MPS);
        List<String> brokenBy = rows.stream().filter(row -> row.bears().cleanUpToMps().orElse(NEVER) == least)
                .flatMap(row -> row.bears().brokenBy().stream().map(rule -> rule + " at " + row.position())).toList();
        return new CriticalWind(fromDeg, least == NEVER ? OptionalDouble.empty() : OptionalDouble.of(least),
                rows.stream().allMatch(row -> row.bears().limitReached()), brokenBy);
    }
}
