package org.girandole.physics.geometry;

import org.girandole.physics.Require;

/**
 * A round area.
 *
 * @param centre the middle
 * @param radiusM the radius in metres, 0 for a single place
 */
public record Disc(Point2 centre, double radiusM) implements Shape {
    public Disc {
        Require.notNegative(radiusM, "radius", "m");
    }

    @Override
    public boolean contains(Point2 place) {
        return centre.distanceM(place) <= radiusM;
    }

    @Override
    public Point2 nearest(Point2 place) {
        double away = centre.distanceM(place);
        if (away <= radiusM) {
            return place;
        }
        double share = radiusM / away;
        return new Point2(centre.x() + share * (place.x() - centre.x()), centre.y() + share * (place.y() - centre.y()));
    }

    @Override
    public double edgeDistanceM(Point2 place) {
        return Math.abs(centre.distanceM(place) - radiusM);
    }
}
