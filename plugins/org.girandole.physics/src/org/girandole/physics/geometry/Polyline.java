package org.girandole.physics.geometry;

import java.util.ArrayList;
import java.util.List;

import org.girandole.physics.PhysicsInputException;

/**
 * Straight pieces joined end to end, such as an audience line; it may cross itself. One point alone is allowed.
 *
 * @param points at least one point
 */
public record Polyline(List<Point2> points) implements Shape {
    public Polyline {
        points = List.copyOf(points);
        if (points.isEmpty()) {
            throw new PhysicsInputException("a line without points", "one point or more", "give its points");
        }
    }

    /** The pieces in order; a line of one point is one piece of length zero. */
    public List<Segment> segments() {
        List<Segment> segments = new ArrayList<>();
        for (int i = 1; i < points.size(); i++) {
            segments.add(new Segment(points.get(i - 1), points.get(i)));
        }
        return segments.isEmpty() ? List.of(new Segment(points.get(0), points.get(0))) : List.copyOf(segments);
    }

    /** Metres along all pieces. */
    public double lengthM() {
        double length = 0;
        for (Segment segment : segments()) {
            length += segment.from().distanceM(segment.to());
        }
        return length;
    }

    /** The point half way along the line. */
    public Point2 middle() {
        double remaining = lengthM() / 2;
        for (Segment segment : segments()) {
            double length = segment.from().distanceM(segment.to());
            if (length > 0 && remaining <= length) {
                double share = remaining / length;
                return new Point2(segment.from().x() + share * (segment.to().x() - segment.from().x()),
                        segment.from().y() + share * (segment.to().y() - segment.from().y()));
            }
            remaining -= length;
        }
        return points.get(points.size() - 1);
    }

    @Override
    public Point2 nearest(Point2 place) {
        return nearestOf(segments(), place);
    }

    @Override
    public boolean contains(Point2 place) {
        return distanceM(place) == 0;
    }

    /** The nearest point of several segments; of equally near ones the first. */
    static Point2 nearestOf(List<Segment> segments, Point2 place) {
        Point2 best = segments.get(0).nearest(place);
        double bestM = best.distanceM(place);
        for (Segment segment : segments) {
            Point2 candidate = segment.nearest(place);
            double candidateM = candidate.distanceM(place);
            if (candidateM < bestM) {
                best = candidate;
                bestM = candidateM;
            }
        }
        return best;
    }

    @Override
    public double edgeDistanceM(Point2 place) {
        return distanceM(place);
    }
}
