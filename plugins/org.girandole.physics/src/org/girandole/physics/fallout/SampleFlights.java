package org.girandole.physics.fallout;

import org.girandole.physics.flight.Body;
import org.girandole.physics.flight.Launch;

/** Flies the samples of one spec after another. Reuses its arrays; one instance a thread. */
final class SampleFlights {
    /** Error allowed in a step of a flight; the landing place is then right to a fifth of a metre, as the tests hold. */
    static final double TOLERANCE_MPS = 0.005;
    /** A factor drawn from a normal distribution is never less than this. */
    private static final double LEAST_FACTOR = 0.2;

    final double[] unburstX;
    final double[] unburstY;
    final double[] debrisX;
    final double[] debrisY;

    private final AirColumn column;
    private final BlockFlight flight;

    SampleFlights(AirColumn column, int samples) {
        this.column = column;
        this.flight = new BlockFlight(column, TOLERANCE_MPS);
        unburstX = new double[samples];
        unburstY = new double[samples];
        debrisX = new double[samples];
        debrisY = new double[samples];
    }

    void fly(FalloutSpec spec, long seed) {
        Draws draws = new Draws(seed, spec.key());
        Scatter scatter = spec.scatter();
        Body body = spec.body();
        Launch launch = spec.launch();
        double perCd = body.areaM2() / (2 * body.massKg());
        double tilt = Math.toRadians(launch.tiltDeg());
        double azimuth = Math.toRadians(launch.azimuthDeg());
        double sinTilt = StrictMath.sin(tilt);
        double cosTilt = StrictMath.cos(tilt);
        double sinAzimuth = StrictMath.sin(azimuth);
        double cosAzimuth = StrictMath.cos(azimuth);
        double wobble = Math.toRadians(scatter.tiltDeg());
        double turn = Math.toRadians(scatter.windDeg());
        double burstS = spec.burst().map(burst -> burst.riseUs() / 1e6).orElse(Double.POSITIVE_INFINITY);
        flight.drag(body.drag());
        for (int first = 0; first < unburstX.length; first += BlockFlight.LANES) {
            int lanes = Math.min(BlockFlight.LANES, unburstX.length - first);
            for (int lane = 0; lane < lanes; lane++) {
                draws.sample(first + lane);
                double speed = launch.speedMps() * factor(scatter.speedShare(), draws.normal());
                // The axis of the tube, pushed along its tilt and across it, then brought back to length one.
                double along = wobble * draws.normal();
                double across = wobble * draws.normal();
                double outwards = sinTilt + along * cosTilt;
                double east = outwards * sinAzimuth + across * cosAzimuth;
                double north = outwards * cosAzimuth - across * sinAzimuth;
                double up = cosTilt - along * sinTilt;
                double scale = speed / Math.sqrt(east * east + north * north + up * up);
                double wind = Math.max(0, 1 + scatter.windShare() * draws.normal());
                double windTurn = turn * draws.normal();
                flight.windAlong[lane] = wind * StrictMath.cos(windTurn);
                flight.windAcross[lane] = wind * StrictMath.sin(windTurn);
                flight.perCd[lane] = perCd * factor(scatter.dragShare(), draws.normal());
                flight.burstS[lane] = Math.max(0, burstS + scatter.burstUs() / 1e6 * draws.normal());
                flight.x[lane] = 0;
                flight.y[lane] = 0;
                flight.z[lane] = launch.muzzle().z();
                flight.u[lane] = scale * east;
                flight.v[lane] = scale * north;
                flight.w[lane] = scale * up;
            }
            flight.fly(lanes);
            land(spec, draws, first, lanes);
        }
    }

    private void land(FalloutSpec spec, Draws draws, int first, int lanes) {
        for (int lane = 0; lane < lanes; lane++) {
            int i = first + lane;
            unburstX[i] = spec.launch().muzzle().x() + flight.groundX[lane];
            unburstY[i] = spec.launch().muzzle().y() + flight.groundY[lane];
            if (spec.debris().isPresent()) {
                draws.piece(i);
                debris(i, lane, spec, spec.debris().get(), draws);
            }
        }
    }

    private static double factor(double share, double normal) {
        return Math.max(LEAST_FACTOR, 1 + share * normal);
    }

    /** Lets one piece sink from a place in the ball of the burst. */
    private void debris(int i, int lane, FalloutSpec spec, Debris debris, Draws draws) {
        double sinks = debris.slowestMps() + (debris.fastestMps() - debris.slowestMps()) * draws.uniform();
        // The height of a point of a sphere is uniform, the radius goes with the cube root.
        double upShare = 2 * draws.uniform() - 1;
        double around = 2 * Math.PI * draws.uniform();
        double radius = debris.radiusM() * StrictMath.cbrt(draws.uniform());
        double flat = radius * Math.sqrt(Math.max(0, 1 - upShare * upShare));
        double height = Math.max(0, flight.burstZ[lane] + radius * upShare);
        double east = column.driftEastM(height) / sinks;
        double north = column.driftNorthM(height) / sinks;
        double along = flight.windAlong[lane];
        double across = flight.windAcross[lane];
        debrisX[i] = spec.launch().muzzle().x() + flight.burstX[lane] + flat * StrictMath.sin(around) + along * east
                + across * north;
        debrisY[i] = spec.launch().muzzle().y() + flight.burstY[lane] + flat * StrictMath.cos(around) + along * north
                - across * east;
    }
}
