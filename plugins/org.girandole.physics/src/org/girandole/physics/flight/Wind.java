package org.girandole.physics.flight;

import org.girandole.physics.Require;

/**
 * The wind by height. Directions are where the wind comes from, in degrees clockwise from north, as weather reports
 * give them.
 */
public sealed interface Wind permits UniformWind, PowerLawWind, LayeredWind {
    /** No wind at all. */
    Wind CALM = new UniformWind(0, 0);

    /** Eastward speed of the air in m/s at {@code heightM} metres above the ground. */
    double eastMps(double heightM);

    /** Northward speed of the air in m/s at {@code heightM} metres above the ground. */
    double northMps(double heightM);

    /** Eastward part of wind from {@code fromDeg}. */
    static double east(double fromDeg, double speedMps) {
        return -speedMps * StrictMath.sin(Math.toRadians(fromDeg));
    }

    /** Northward part of wind from {@code fromDeg}. */
    static double north(double fromDeg, double speedMps) {
        return -speedMps * StrictMath.cos(Math.toRadians(fromDeg));
    }

    /** Checks a direction and a speed. */
    static void require(double fromDeg, double speedMps) {
        Require.finite(fromDeg, "direction of the wind", "deg");
        Require.between(speedMps, 0, 100, "speed of the wind", "m/s");
    }
}
