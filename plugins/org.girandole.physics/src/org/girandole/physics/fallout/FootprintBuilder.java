package org.girandole.physics.fallout;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

import org.girandole.physics.geometry.Point2;
import org.girandole.physics.geometry.Shape;

/** Turns landing places into a {@link Footprint}. Reuses its arrays; one instance a thread. */
final class FootprintBuilder {
    /** Added to each variance, in square metres: keeps the distance defined where there is no scatter in a direction. */
    private static final double LEAST_VARIANCE_M2 = 1e-6;

    private final double[] shares;
    private final List<Shape> watched;
    private final double[] distances;
    private final double[] sorted;
    private final double[] x;
    private final double[] y;
    private final double[] nearX;
    private final double[] nearY;

    FootprintBuilder(double[] shares, List<Shape> watched, int samples) {
        this.shares = shares;
        this.watched = watched;
        this.distances = new double[samples];
        this.sorted = new double[samples];
        this.x = new double[samples];
        this.y = new double[samples];
        this.nearX = new double[samples];
        this.nearY = new double[samples];
    }

    /**
     * @param fromOriginX where samples land that are fired from the site's origin, metres to the east
     * @param fromOriginY the same, metres to the north
     * @param from the firing place, to which they are moved and from which "farthest" is measured
     */
    Footprint build(double[] fromOriginX, double[] fromOriginY, Point2 from) {
        int n = distances.length;
        for (int i = 0; i < n; i++) {
            x[i] = fromOriginX[i] + from.x();
            y[i] = fromOriginY[i] + from.y();
        }
        double meanX = mean(x);
        double meanY = mean(y);
        if (shares.length > 0) {
            measure(x, y, meanX, meanY);
            System.arraycopy(distances, 0, sorted, 0, n);
            Arrays.sort(sorted);
        }
        List<Footprint.Area> areas = new ArrayList<>();
        for (double share : shares) {
            double limit = sorted[(int) Math.ceil(share * n) - 1];
            int near = 0;
            for (int i = 0; i < n; i++) {
                if (distances[i] <= limit) {
                    nearX[near] = x[i];
                    nearY[near++] = y[i];
                }
            }
            areas.add(new Footprint.Area(share, Hull.of(nearX, nearY, near)));
        }
        return new Footprint(n, new Point2(meanX, meanY), farthest(x, y, from), areas, inWatched(x, y));
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

    private List<Double> inWatched(double[] x, double[] y) {
        List<Double> in = new ArrayList<>();
        for (Shape shape : watched) {
            int count = 0;
            for (int i = 0; i < x.length; i++) {
                if (shape.contains(new Point2(x[i], y[i]))) {
                    count++;
                }
            }
            in.add((double) count / x.length);
        }
        return in;
    }
}
