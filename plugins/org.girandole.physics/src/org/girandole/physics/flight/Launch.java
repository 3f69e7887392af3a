package org.girandole.physics.flight;

import org.girandole.physics.Require;
import org.girandole.physics.geometry.Point3;

/**
 * How something leaves its tube.
 *
 * @param muzzle where it leaves, z in metres above the site's ground
 * @param speedMps muzzle speed in m/s
 * @param tiltDeg tilt from the vertical in degrees, 0 up to but without 90
 * @param azimuthDeg where the tube leans, degrees clockwise from north; without meaning at tilt 0
 */
public record Launch(Point3 muzzle, double speedMps, double tiltDeg, double azimuthDeg) {
    public Launch {
        Require.notNegative(muzzle.z(), "height of the muzzle above ground", "m");
        Require.positive(speedMps, "muzzle speed", "m/s");
        Require.between(tiltDeg, 0, Math.nextDown(90.0), "tilt from the vertical", "deg");
        Require.finite(azimuthDeg, "azimuth of the tilt", "deg");
    }

    /** Straight up from the ground at the site's origin. */
    public static Launch vertical(double speedMps) {
        return new Launch(new Point3(0, 0, 0), speedMps, 0, 0);
    }

    double eastMps() {
        return horizontalMps() * StrictMath.sin(Math.toRadians(azimuthDeg));
    }

    double northMps() {
        return horizontalMps() * StrictMath.cos(Math.toRadians(azimuthDeg));
    }

    double upMps() {
        return speedMps * StrictMath.cos(Math.toRadians(tiltDeg));
    }

    private double horizontalMps() {
        return speedMps * StrictMath.sin(Math.toRadians(tiltDeg));
    }
}
