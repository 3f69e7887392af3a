package org.girandole.physics.fallout;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

import org.girandole.physics.geometry.Point2;
import org.girandole.physics.geometry.Polygon;

/** Convex hulls by the monotone chain of A. M. Andrew (1979). */
final class Hull {
    /** Half the size of what lands: a hull without area is drawn as large as this around its points. */
    private static final double LEAST_RADIUS_M = 0.5;
    private static final double LEAST_AREA_M2 = 0.01;
    private static final int ROUND_CORNERS = 8;

    private Hull() {
    }

    /**
     * The hull of the first {@code n} points, counter-clockwise from the westernmost. Points without area between them
     * give a small area around them.
     */
    static Polygon of(double[] x, double[] y, int n) {
        List<Point2> corners = corners(x, y, n);
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
        Point2[] points = outer(x, y, n);
        Arrays.sort(points, (a, b) -> a.x() != b.x() ? Double.compare(a.x(), b.x()) : Double.compare(a.y(), b.y()));
        List<Point2> lower = chain(points, 0, 1);
        List<Point2> upper = chain(points, points.length - 1, -1);
        lower.remove(lower.size() - 1);
        upper.remove(upper.size() - 1);
        lower.addAll(upper);
        return lower.isEmpty() ? List.of(points[0]) : lower;
    }

    /**
     * The points that can be corners: those not inside the figure of the four extreme points (Akl and Toussaint 1978),
     * which is most of a cloud.
     */
    private static Point2[] outer(double[] x, double[] y, int n) {
        int west = 0;
        int east = 0;
        int south = 0;
        int north = 0;
        for (int i = 1; i < n; i++) {
            west = x[i] < x[west] ? i : west;
            east = x[i] > x[east] ? i : east;
            south = y[i] < y[south] ? i : south;
            north = y[i] > y[north] ? i : north;
        }
        Point2[] kept = new Point2[n];
        int count = 0;
        for (int i = 0; i < n; i++) {
            boolean inside = left(x, y, west, south, i) && left(x, y, south, east, i) && left(x, y, east, north, i)
                    && left(x, y, north, west, i);
            if (!inside) {
                kept[count++] = new Point2(x[i], y[i]);
            }
        }
        return Arrays.copyOf(kept, count);
    }

    private static boolean left(double[] x, double[] y, int a, int b, int p) {
        return (x[b] - x[a]) * (y[p] - y[a]) - (y[b] - y[a]) * (x[p] - x[a]) > 0;
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
}
