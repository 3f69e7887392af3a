package org.girandole.physics.geometry;

/** Something on the ground that has a nearest point and may have an inside. */
public sealed interface Shape permits Polyline, Polygon, Disc {

    /** The point of this shape nearest to {@code place}; {@code place} itself if it lies inside. */
    Point2 nearest(Point2 place);

    /** True if {@code place} lies inside or on the edge. A line has no inside, only its own points. */
    boolean contains(Point2 place);

    /** Metres from {@code place} to the nearest edge, also for a place inside. */
    double edgeDistanceM(Point2 place);

    /** Metres from {@code place} to the nearest point; 0 inside. */
    default double distanceM(Point2 place) {
        return nearest(place).distanceM(place);
    }
}
