package org.girandole.physics.geometry;

/**
 * A straight piece between two points, which may coincide.
 *
 * @param from one end
 * @param to the other end
 */
public record Segment(Point2 from, Point2 to) {

    /** The point of the segment nearest to {@code place}. */
    public Point2 nearest(Point2 place) {
        double dx = to.x() - from.x();
        double dy = to.y() - from.y();
        double squared = dx * dx + dy * dy;
        if (squared == 0) {
            return from;
        }
        double share = ((place.x() - from.x()) * dx + (place.y() - from.y()) * dy) / squared;
        if (share <= 0) {
            return from;
        }
        return share >= 1 ? to : new Point2(from.x() + share * dx, from.y() + share * dy);
    }

    /** Metres from {@code place} to the nearest point of the segment. */
    public double distanceM(Point2 place) {
        return nearest(place).distanceM(place);
    }

    /** True if the two segments share at least one point. */
    public boolean meets(Segment other) {
        int a = side(from, to, other.from);
        int b = side(from, to, other.to);
        int c = side(other.from, other.to, from);
        int d = side(other.from, other.to, to);
        if (a * b < 0 && c * d < 0) {
            return true;
        }
        return a == 0 && spans(other.from) || b == 0 && spans(other.to)
                || c == 0 && other.spans(from) || d == 0 && other.spans(to);
    }

    /** On which side of the line from {@code a} to {@code b} the point lies: 1 left, -1 right, 0 on it. */
    private static int side(Point2 a, Point2 b, Point2 p) {
        return (int) Math.signum((b.x() - a.x()) * (p.y() - a.y()) - (b.y() - a.y()) * (p.x() - a.x()));
    }

    /** True if a point on the segment's line lies within the segment's box. */
    private boolean spans(Point2 p) {
        return p.x() >= Math.min(from.x(), to.x()) && p.x() <= Math.max(from.x(), to.x())
                && p.y() >= Math.min(from.y(), to.y()) && p.y() <= Math.max(from.y(), to.y());
    }
}
