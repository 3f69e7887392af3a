package org.girandole.plan.rules.distance;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.IntStream;
import org.girandole.physics.wind.CriticalWind;
import org.girandole.plan.Plan;

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
    }

    /** Whether anything is clean only because somebody agreed to what is found. */
    public boolean waived() {
        return rows.stream().anyMatch(row -> row.states().contains(SiteInWind.State.WAIVED));
    }

    /** The table for wind from {@code fromDeg}. */
    public static WindTable of(Plan plan, double fromDeg) {
        Map<Integer, SiteInWind> tried = new HashMap<>();
        Map<String, CriticalWind> bears = new LinkedHashMap<>();
        CriticalWind whole = CriticalWind.find(fromDeg, SiteInWind.STRONGEST_MPS, (from, speed) -> in(tried, plan, from, speed).broken());
        for (String position : SiteInWind.positions(plan)) {
            bears.put(position, CriticalWind.find(fromDeg, SiteInWind.STRONGEST_MPS, (from, speed) -> in(tried, plan, from, speed).brokenAt(position)));
        }
        List<Row> rows = new ArrayList<>();
        bears.forEach((position, wind) -> rows.add(new Row(position, wind,
                SPEEDS_MPS.stream().map(speed -> in(tried, plan, fromDeg, speed).state(position)).toList())));
        return new WindTable(fromDeg, whole, rows);
    }

    private static SiteInWind in(Map<Integer, SiteInWind> tried, Plan plan, double fromDeg, double speedMps) {
        return tried.computeIfAbsent((int) Math.round(speedMps * TENTHS), tenths -> SiteInWind.of(plan, fromDeg, speedMps));
    }
}
