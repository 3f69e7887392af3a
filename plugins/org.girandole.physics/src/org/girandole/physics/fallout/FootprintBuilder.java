package org.girandole.physics.fallout;

import java.util.ArrayList;
import java.util.List;

import org.girandole.physics.geometry.Point2;
import org.girandole.physics.geometry.Shape;

/** Turns landing places into a {@link Footprint}. Reuses its arrays; one instance a thread. */
final class FootprintBuilder {
    /** Added to each variance, in square metres: keeps the distance defined where there is no scatter in a direction. */
    private static final double LEAST_VARIANCE_M2 = 1e-6;

    /** Far more than the distances of a site are rounded by. */
    private static final double ROUNDING_M = 1e-3;

    private final double[] shares;
    private final List<Shape> watched;
    private final double[] distances;
    private final double[] ranked;
    private final double[] x;
    private final double[] y;
    private final Hull hull;

    FootprintBuilder(double[] shares, List<Shape> watched, int samples) {
        this.shares = shares;
        this.watched = watched;
        this.distances = new double[samples];
        this.ranked = new double[samples];
        this.x = new double[samples];
        this.y = new double[samples];
        this.hull = new Hull(samples);
    }

    /**
     * @param fromOriginX where samples land that are fired from the site's origin, metres to the east
     * @param fromOriginY the same, metres to the north
     * @param from the firing place, to which they are moved and from which "farthest" is measured
     */
    Footprint build(double[] fromOriginX, double[] fromOriginY, Point2 from) {
        move(fromOriginX, from.x(), x);
        move(fromOriginY, from.y(), y);
        double meanX = mean(x);
        double meanY = mean(y);
        Point2 farthest = farthest(x, y, from);
        return new Footprint(x.length, new Point2(meanX, meanY), farthest, areas(meanX, meanY), inWatched(from, farthest.distanceM(from)));
    }

    private static void move(double[] from, double by, double[] to) {
        for (int i = 0; i < to.length; i++) {
            to[i] = from[i] + by;
        }
    }

    private List<Footprint.Area> areas(double meanX, double meanY) {
        List<Footprint.Area> areas = new ArrayList<>();
        if (shares.length == 0) {
            return areas;
        }
        measure(x, y, meanX, meanY);
        System.arraycopy(distances, 0, ranked, 0, ranked.length);
        hull.clear();
        int done = 0;
        double nearer = Double.NEGATIVE_INFINITY;
        for (double share : shares) {
            int last = (int) Math.ceil(share * ranked.length) - 1;
            double limit = Selection.place(ranked, done, last);
            hull.add(x, y, distances, nearer, limit);
            areas.add(new Footprint.Area(share, hull.outline()));
            done = last;
            nearer = limit;
        }
        return areas;
    }

    private static double mean(double[] values) {
        double sum = 0;
        for (double value : values) {
            sum += value;
        }
        return sum / values.length;
    }

    private void measure(double[] x, double[] y, double meanX, double meanY) {
        double xx = LEAST_VARIANCE_M2;
        double xy = 0;
        double yy = LEAST_VARIANCE_M2;
        int n = x.length;
        for (int i = 0; i < n; i++) {
            double dx = x[i] - meanX;
            double dy = y[i] - meanY;
            xx += dx * dx / n;
            xy += dx * dy / n;
            yy += dy * dy / n;
        }
        double determinant = xx * yy - xy * xy;
        for (int i = 0; i < n; i++) {
            double dx = x[i] - meanX;
            double dy = y[i] - meanY;
            distances[i] = (yy * dx * dx - 2 * xy * dx * dy + xx * dy * dy) / determinant;
        }
    }

    private static Point2 farthest(double[] x, double[] y, Point2 from) {
        int farthest = 0;
        double most = -1;
        for (int i = 0; i < x.length; i++) {
            double dx = x[i] - from.x();
            double dy = y[i] - from.y();
            if (dx * dx + dy * dy > most) {
                most = dx * dx + dy * dy;
                farthest = i;
            }
        }
        return new Point2(x[farthest], y[farthest]);
    }

    private List<Double> inWatched(Point2 from, double reachM) {
        List<Double> in = new ArrayList<>();
        for (Shape shape : watched) {
            // Where no sample comes as far as the edge, all are on the side of the firing place.
            boolean reached = shape.edgeDistanceM(from) <= reachM + ROUNDING_M;
            in.add(reached ? (double) count(shape) / x.length : shape.contains(from) ? 1.0 : 0.0);
        }
        return in;
    }

    private int count(Shape shape) {
        int count = 0;
        for (int i = 0; i < x.length; i++) {
            if (shape.contains(new Point2(x[i], y[i]))) {
                count++;
            }
        }
        return count;
    }
}
