package org.girandole.physics.flight;

import org.girandole.physics.Require;

/**
 * Wind that grows with height by a power law, {@code v = v_ref (z / z_ref)^p}: what a wind measured near the ground is
 * likely to be where the shells burst.
 *
 * @param fromDeg where it comes from, degrees clockwise from north, at every height
 * @param speedMps its speed in m/s where it was measured
 * @param measuredAtM height above ground of the measurement in metres
 * @param exponent the exponent p; {@link #OPEN_GROUND} for open flat ground
 */
public record PowerLawWind(double fromDeg, double speedMps, double measuredAtM, double exponent) implements Wind {
    /** One seventh, the usual exponent over open flat ground in neutral air; textbook value, from memory. */
    public static final double OPEN_GROUND = 1.0 / 7;

    public PowerLawWind {
        Wind.require(fromDeg, speedMps);
        Require.between(measuredAtM, 0.5, 500, "height of the wind measurement", "m");
        Require.between(exponent, 0, 1, "exponent of the wind profile", "");
    }

    private double speedMps(double heightM) {
        return heightM <= 0 ? 0 : speedMps * StrictMath.pow(heightM / measuredAtM, exponent);
    }

    @Override
    public double eastMps(double heightM) {
        return Wind.east(fromDeg, speedMps(heightM));
    }

    @Override
    public double northMps(double heightM) {
        return Wind.north(fromDeg, speedMps(heightM));
    }
}
