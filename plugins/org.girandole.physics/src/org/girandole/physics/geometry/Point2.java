package org.girandole.physics.geometry;

import org.girandole.physics.Require;

/**
 * A place on the ground.
 *
 * @param x metres east of the site's origin
 * @param y metres north of the site's origin
 */
public record Point2(double x, double y) {
    public Point2 {
        Require.finite(x, "x of a place", "m");
        Require.finite(y, "y of a place", "m");
    }

    public double distanceM(Point2 other) {
        return StrictMath.hypot(other.x - x, other.y - y);
    }

    /**
     * The azimuth from here to {@code other} in degrees clockwise from north, 0 up to but without 360; 0 if both are
     * the same place.
     */
    public double azimuthDegTo(Point2 other) {
        double degrees = Math.toDegrees(StrictMath.atan2(other.x - x, other.y - y));
        double positive = degrees < 0 ? degrees + 360 : degrees;
        // A tiny negative angle plus 360 rounds to 360 itself; adding zero turns a negative zero into a plain one.
        return positive >= 360 ? 0 : positive + 0.0;
    }

    /** The place {@code distanceM} away towards {@code azimuthDeg}, degrees clockwise from north. */
    public Point2 towards(double azimuthDeg, double distanceM) {
        double azimuth = Math.toRadians(azimuthDeg);
        return new Point2(x + distanceM * StrictMath.sin(azimuth), y + distanceM * StrictMath.cos(azimuth));
    }

    /** This place at {@code z} metres above the ground. */
    public Point3 at(double z) {
        return new Point3(x, y, z);
    }
}
