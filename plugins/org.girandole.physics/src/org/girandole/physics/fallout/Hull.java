package org.girandole.physics.fallout;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

import org.girandole.physics.geometry.Point2;
import org.girandole.physics.geometry.Polygon;

/**
 * The convex hull of a growing cloud, by the monotone chain of A. M. Andrew (1979). Once the hull has been asked for
 * only its corners are kept, so that a larger hull costs no more than what was added. Reuses its arrays; one instance a
 * thread.
 */
final class Hull {
    /** Half the size of what lands: a hull without area is drawn as large as this around its points. */
    private static final double LEAST_RADIUS_M = 0.5;
    private static final double LEAST_AREA_M2 = 0.01;
    private static final int ROUND_CORNERS = 8;

    private final double[] x;
    private final double[] y;
    /** How far inside the figure of the extreme points each point lies, in no unit; not above 0 for on it or outside. */
    private final double[] inside;
    private int n;

    /** @param most how many points it must hold */
    Hull(int most) {
        // One more, because a point is written before it is known to count.
        x = new double[most + 1];
        y = new double[most + 1];
        inside = new double[most];
    }

    void clear() {
        n = 0;
    }

    /** Adds the points with a rank above {@code above}, at most {@code limit}. */
    void add(double[] pointX, double[] pointY, double[] rank, double above, double limit) {
        int count = n;
        for (int i = 0; i < rank.length; i++) {
            x[count] = pointX[i];
            y[count] = pointY[i];
            count += rank[i] > above && rank[i] <= limit ? 1 : 0;
        }
        n = count;
    }

    /**
     * The hull of all points added since it was cleared, counter-clockwise from the westernmost. Points without area
     * between them give a small area around them.
     */
    Polygon outline() {
        dropInner();
        List<Point2> corners = corners(x, y, n);
        n = 0;
        for (Point2 corner : corners) {
            x[n] = corner.x();
            y[n++] = corner.y();
        }
        if (corners.size() < 3 || Polygon.signedAreaM2(corners) < LEAST_AREA_M2) {
            corners = widened(corners);
        }
        return new Polygon(corners);
    }

    private static List<Point2> widened(List<Point2> corners) {
        double[] x = new double[corners.size() * ROUND_CORNERS];
        double[] y = new double[x.length];
        int n = 0;
        for (Point2 corner : corners) {
            for (int i = 0; i < ROUND_CORNERS; i++) {
                Point2 around = corner.towards(360.0 * i / ROUND_CORNERS, LEAST_RADIUS_M);
                x[n] = around.x();
                y[n++] = around.y();
            }
        }
        return corners(x, y, n);
    }

    private static List<Point2> corners(double[] x, double[] y, int n) {
        Point2[] points = new Point2[n];
        for (int i = 0; i < n; i++) {
            points[i] = new Point2(x[i], y[i]);
        }
        Arrays.sort(points, (a, b) -> a.x() != b.x() ? Double.compare(a.x(), b.x()) : Double.compare(a.y(), b.y()));
        List<Point2> lower = chain(points, 0, 1);
        List<Point2> upper = chain(points, points.length - 1, -1);
        lower.remove(lower.size() - 1);
        upper.remove(upper.size() - 1);
        lower.addAll(upper);
        return lower.isEmpty() ? List.of(points[0]) : lower;
    }

    private static List<Point2> chain(Point2[] points, int from, int step) {
        List<Point2> chain = new ArrayList<>();
        for (int i = from; i >= 0 && i < points.length; i += step) {
            while (chain.size() >= 2 && !turnsLeft(chain.get(chain.size() - 2), chain.get(chain.size() - 1), points[i])) {
                chain.remove(chain.size() - 1);
            }
            chain.add(points[i]);
        }
        return chain;
    }

    private static boolean turnsLeft(Point2 a, Point2 b, Point2 c) {
        return (b.x() - a.x()) * (c.y() - a.y()) - (b.y() - a.y()) * (c.x() - a.x()) > 0;
    }

    /**
     * Drops the points inside the figure of the eight extreme points, which cannot be corners and are most of a cloud
     * (Akl and Toussaint 1978, with eight for four).
     */
    private void dropInner() {
        Arrays.fill(inside, 0, n, Double.POSITIVE_INFINITY);
        int[] extremes = extremes(x, y, n);
        int edges = 0;
        for (int i = 0; i < extremes.length; i++) {
            int from = extremes[i];
            int to = extremes[(i + 1) % extremes.length];
            if (x[from] != x[to] || y[from] != y[to]) {
                cut(x[from], y[from], x[to] - x[from], y[to] - y[from]);
                edges++;
            }
        }
        if (edges > 2) {
            keepOuter();
        }
    }

    /** Extreme points to the west, south-west, south and so on: counter-clockwise around the cloud. */
    private static int[] extremes(double[] x, double[] y, int n) {
        int west = 0;
        int southWest = 0;
        int south = 0;
        int southEast = 0;
        int east = 0;
        int northEast = 0;
        int north = 0;
        int northWest = 0;
        for (int i = 1; i < n; i++) {
            double sum = x[i] + y[i];
            double difference = x[i] - y[i];
            west = x[i] < x[west] ? i : west;
            southWest = sum < x[southWest] + y[southWest] ? i : southWest;
            south = y[i] < y[south] ? i : south;
            southEast = difference > x[southEast] - y[southEast] ? i : southEast;
            east = x[i] > x[east] ? i : east;
            northEast = sum > x[northEast] + y[northEast] ? i : northEast;
            north = y[i] > y[north] ? i : north;
            northWest = difference < x[northWest] - y[northWest] ? i : northWest;
        }
        return new int[] {west, southWest, south, southEast, east, northEast, north, northWest};
    }

    /** Notes which points lie left of an edge; several at once, because no point waits for another. */
    private void cut(double fromX, double fromY, double alongX, double alongY) {
        double[] px = x;
        double[] py = y;
        double[] least = inside;
        for (int i = 0; i < n; i++) {
            least[i] = Math.min(least[i], alongX * (py[i] - fromY) - alongY * (px[i] - fromX));
        }
    }

    private void keepOuter() {
        int count = 0;
        for (int i = 0; i < n; i++) {
            x[count] = x[i];
            y[count] = y[i];
            count += inside[i] > 0 ? 0 : 1;
        }
        n = count;
    }
}
