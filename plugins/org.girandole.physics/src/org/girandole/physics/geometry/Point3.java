package org.girandole.physics.geometry;

import org.girandole.physics.Require;

/**
 * A place in the air.
 *
 * @param x metres east of the site's origin
 * @param y metres north of the site's origin
 * @param z metres above the site's ground
 */
public record Point3(double x, double y, double z) {
    public Point3 {
        Require.finite(x, "x of a place", "m");
        Require.finite(y, "y of a place", "m");
        Require.finite(z, "height of a place", "m");
    }

    public double distanceM(Point3 other) {
        return Math.sqrt((other.x - x) * (other.x - x) + (other.y - y) * (other.y - y) + (other.z - z) * (other.z - z));
    }

    /** The place on the ground straight below. */
    public Point2 ground() {
        return new Point2(x, y);
    }
}
