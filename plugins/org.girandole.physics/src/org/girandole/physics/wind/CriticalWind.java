package org.girandole.physics.wind;

import java.util.List;
import java.util.OptionalDouble;

import org.girandole.physics.Figures;
import org.girandole.physics.Require;

/**
 * The strongest wind from one direction at which nothing is broken, at this wind or any weaker one.
 *
 * @param fromDeg where the wind comes from, degrees clockwise from north
 * @param cleanUpToMps the strongest clean wind in m/s, in whole tenths rounded down; empty if even calm is not clean
 * @param limitReached true if nothing broke up to the strongest wind tried, so that the true value may be higher
 * @param brokenBy what breaks first above it; empty if nothing broke
 */
public record CriticalWind(double fromDeg, OptionalDouble cleanUpToMps, boolean limitReached, List<String> brokenBy) {
    private static final int TENTHS = 10;
    /** Tried first in steps of half a metre a second, then in tenths. */
    private static final int COARSE_TENTHS = 5;

    public CriticalWind {
        brokenBy = List.copyOf(brokenBy);
    }

    /**
     * Raises the wind from calm until something breaks. What breaks for less than half a metre a second of wind and
     * then mends is not seen.
     *
     * @param fromDeg where the wind comes from, degrees clockwise from north
     * @param strongestMps the strongest wind tried, in m/s
     */
    public static CriticalWind find(double fromDeg, double strongestMps, WindCheck check) {
        Require.finite(fromDeg, "direction of the wind", "deg");
        Require.between(strongestMps, 0.1, 100, "strongest wind to try", "m/s");
        int last = (int) Math.floor(strongestMps * TENTHS + 1e-9);
        List<String> broken = ask(check, fromDeg, 0);
        if (!broken.isEmpty()) {
            return new CriticalWind(fromDeg, OptionalDouble.empty(), false, broken);
        }
        int clean = 0;
        while (clean < last) {
            int next = Math.min(clean + COARSE_TENTHS, last);
            broken = ask(check, fromDeg, next);
            if (!broken.isEmpty()) {
                return between(fromDeg, clean, next, broken, check);
            }
            clean = next;
        }
        return new CriticalWind(fromDeg, OptionalDouble.of(mps(last)), true, List.of());
    }

    private static CriticalWind between(double fromDeg, int clean, int broken, List<String> by, WindCheck check) {
        for (int tenths = clean + 1; tenths < broken; tenths++) {
            List<String> brokenHere = ask(check, fromDeg, tenths);
            if (!brokenHere.isEmpty()) {
                return new CriticalWind(fromDeg, OptionalDouble.of(mps(tenths - 1)), false, brokenHere);
            }
        }
        return new CriticalWind(fromDeg, OptionalDouble.of(mps(broken - 1)), false, by);
    }

    private static List<String> ask(WindCheck check, double fromDeg, int tenths) {
        return check.brokenBy(fromDeg, mps(tenths));
    }

    private static double mps(int tenths) {
        return (double) tenths / TENTHS;
    }

    /** The finding in one line: {@code clean up to 7.5 m/s from 240 deg}. */
    public String text() {
        if (cleanUpToMps.isEmpty()) {
            return "not clean even without wind";
        }
        return "clean up to " + Figures.of(cleanUpToMps.getAsDouble()) + " m/s from " + Figures.of(fromDeg) + "°"
                + (limitReached ? ", the strongest wind tried" : "");
    }
}
