package org.girandole.physics.geometry;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

import org.girandole.physics.Figures;
import org.girandole.physics.PhysicsInputException;

/**
 * A closed area with straight edges that do not cross. The last corner is joined to the first; a corner is written
 * once. Either turning direction is allowed.
 *
 * @param corners at least three corners
 */
public record Polygon(List<Point2> corners) implements Shape {
    /** @throws PhysicsInputException if there are fewer than three corners, no area, or two edges that cross */
    public Polygon {
        corners = List.copyOf(corners);
        if (corners.size() < 3) {
            throw new PhysicsInputException("an area with " + corners.size() + " corners", "three corners or more",
                    "give the missing corners");
        }
        selfCrossing(corners).ifPresent(crossing -> {
            throw new PhysicsInputException("an area whose edges cross: " + crossing,
                    "edges that meet only at their shared corner", "put the corners in order around the area");
        });
        if (signedAreaM2(corners) == 0) {
            throw new PhysicsInputException("an area of 0 square metres", "corners that are not all on one line",
                    "move a corner");
        }
    }

    /** The first pair of edges that cross or touch where they should not, in words; empty if there is none. */
    public static Optional<String> selfCrossing(List<Point2> corners) {
        List<Segment> edges = edgesOf(corners);
        int n = edges.size();
        for (int i = 0; i < n; i++) {
            for (int j = i + 1; j < n; j++) {
                if (wronglyMeet(edges, i, j)) {
                    return Optional.of("edge " + text(edges.get(i)) + " and edge " + text(edges.get(j)));
                }
            }
        }
        return Optional.empty();
    }

    private static boolean wronglyMeet(List<Segment> edges, int i, int j) {
        Segment first = edges.get(i);
        Segment second = edges.get(j);
        int n = edges.size();
        if (j == i + 1) {
            return foldsBack(first, second);
        }
        if (i == 0 && j == n - 1) {
            return foldsBack(second, first);
        }
        return first.meets(second);
    }

    /** Neighbours share one corner; they are wrong only if one runs back along the other, or has no length. */
    private static boolean foldsBack(Segment before, Segment after) {
        double ax = before.to().x() - before.from().x();
        double ay = before.to().y() - before.from().y();
        double bx = after.to().x() - after.from().x();
        double by = after.to().y() - after.from().y();
        return ax * by - ay * bx == 0 && ax * bx + ay * by <= 0;
    }

    private static String text(Segment edge) {
        return "(" + Figures.of(edge.from().x()) + " m, " + Figures.of(edge.from().y()) + " m) to ("
                + Figures.of(edge.to().x()) + " m, " + Figures.of(edge.to().y()) + " m)";
    }

    private static List<Segment> edgesOf(List<Point2> corners) {
        List<Segment> edges = new ArrayList<>();
        for (int i = 0; i < corners.size(); i++) {
            edges.add(new Segment(corners.get(i), corners.get((i + 1) % corners.size())));
        }
        return edges;
    }

    /** The area within these corners in square metres, positive if they turn counter-clockwise; the edges may not cross. */
    public static double signedAreaM2(List<Point2> corners) {
        double twice = 0;
        for (int i = 0; i < corners.size(); i++) {
            Point2 a = corners.get(i);
            Point2 b = corners.get((i + 1) % corners.size());
            twice += a.x() * b.y() - b.x() * a.y();
        }
        return twice / 2;
    }

    /** The edges in order of the corners. */
    public List<Segment> edges() {
        return List.copyOf(edgesOf(corners));
    }

    /** The area in square metres. */
    public double areaM2() {
        return Math.abs(signedAreaM2(corners));
    }

    @Override
    public boolean contains(Point2 place) {
        // Even-odd rule: count the edges that a ray to the east crosses. Asked for each of many thousand flights, so no edge is built.
        boolean inside = false;
        Point2 b = corners.get(corners.size() - 1);
        for (Point2 corner : corners) {
            Point2 a = b;
            b = corner;
            if (onEdge(a, b, place)) {
                return true;
            }
            if (a.y() > place.y() != b.y() > place.y()
                    && place.x() < (b.x() - a.x()) * (place.y() - a.y()) / (b.y() - a.y()) + a.x()) {
                inside = !inside;
            }
        }
        return inside;
    }

    private static boolean onEdge(Point2 a, Point2 b, Point2 place) {
        return (b.x() - a.x()) * (place.y() - a.y()) == (b.y() - a.y()) * (place.x() - a.x())
                && Math.min(a.x(), b.x()) <= place.x() && place.x() <= Math.max(a.x(), b.x())
                && Math.min(a.y(), b.y()) <= place.y() && place.y() <= Math.max(a.y(), b.y());
    }

    @Override
    public Point2 nearest(Point2 place) {
        return contains(place) ? place : nearestOnEdge(place);
    }

    /** The point of the edge nearest to {@code place}, also for a place inside. */
    public Point2 nearestOnEdge(Point2 place) {
        return Polyline.nearestOf(edgesOf(corners), place);
    }

    @Override
    public double edgeDistanceM(Point2 place) {
        return nearestOnEdge(place).distanceM(place);
    }
}
