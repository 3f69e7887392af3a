package org.girandole.physics.flight;

import org.girandole.physics.geometry.Point3;

/**
 * Where something is and how it moves.
 *
 * @param timeUs microseconds since it left the tube
 * @param place metres east, north, and above the site's ground
 * @param eastMps eastward speed in m/s
 * @param northMps northward speed in m/s
 * @param upMps upward speed in m/s
 */
public record FlightState(long timeUs, Point3 place, double eastMps, double northMps, double upMps) {

    public double speedMps() {
        return Math.sqrt(eastMps * eastMps + northMps * northMps + upMps * upMps);
    }
}
