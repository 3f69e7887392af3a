package org.girandole.physics.flight;

/**
 * The same wind at every height.
 *
 * @param fromDeg where it comes from, degrees clockwise from north
 * @param speedMps its speed in m/s
 */
public record UniformWind(double fromDeg, double speedMps) implements Wind {
    public UniformWind {
        Wind.require(fromDeg, speedMps);
    }

    @Override
    public double eastMps(double heightM) {
        return Wind.east(fromDeg, speedMps);
    }

    @Override
    public double northMps(double heightM) {
        return Wind.north(fromDeg, speedMps);
    }
}
