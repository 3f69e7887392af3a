package org.girandole.physics.fallout;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.SplittableRandom;

import org.girandole.physics.geometry.Point2;
import org.girandole.physics.geometry.Polygon;
import org.junit.jupiter.api.Test;

class HullTest {

    private static Hull hull(double[] x, double[] y, double[] rank, double limit) {
        var hull = new Hull(x.length);
        hull.add(x, y, rank, Double.NEGATIVE_INFINITY, limit);
        return hull;
    }

    /**
     * The corners by their definition alone, in no order: a point is one if all others lie on one side of a line through it, that is if
     * the directions to the others leave a gap of more than half a turn.
     */
    private static Set<Point2> corners(double[] x, double[] y) {
        Set<Point2> corners = new HashSet<>();
        for (int i = 0; i < x.length; i++) {
            List<Double> directions = new ArrayList<>();
            for (int j = 0; j < x.length; j++) {
                if (x[j] != x[i] || y[j] != y[i]) {
                    directions.add(Math.atan2(y[j] - y[i], x[j] - x[i]));
                }
            }
            directions.sort(null);
            double widest = directions.get(0) + 2 * Math.PI - directions.get(directions.size() - 1);
            for (int j = 1; j < directions.size(); j++) {
                widest = Math.max(widest, directions.get(j) - directions.get(j - 1));
            }
            if (widest > Math.PI + 1e-9) {
                corners.add(new Point2(x[i], y[i]));
            }
        }
        return corners;
    }

    @Test
    void cornersByTheirDefinition() {
        var random = new SplittableRandom(11);
        for (int round = 0; round < 20; round++) {
            double[] x = new double[120];
            double[] y = new double[120];
            double slant = random.nextDouble(3);
            Arrays.setAll(x, i -> 100 * NormalQuantile.of(random.nextDouble(0.001, 0.999)));
            Arrays.setAll(y, i -> slant * x[i] + 20 * NormalQuantile.of(random.nextDouble(0.001, 0.999)));
            List<Point2> found = hull(x, y, new double[120], 0).outline().corners();
            assertThat(found).containsExactlyInAnyOrderElementsOf(corners(x, y));
            assertThat(Polygon.signedAreaM2(found)).isPositive();
            assertThat(found.get(0).x()).isEqualTo(Arrays.stream(x).min().orElseThrow());
        }
    }

    @Test
    void cornersOfASquareFullOfPoints() {
        // Whole numbers, so that many points lie exactly on the edges and several are extreme in one direction
        double[] x = new double[121];
        double[] y = new double[121];
        Arrays.setAll(x, i -> i % 11);
        Arrays.setAll(y, i -> i / 11);
        assertThat(hull(x, y, new double[121], 0).outline().corners())
                .containsExactly(new Point2(0, 0), new Point2(10, 0), new Point2(10, 10), new Point2(0, 10));
    }

    @Test
    void aGrowingHullIsThatOfAllItsPoints() {
        var random = new SplittableRandom(12);
        double[] x = random.doubles(1000, -50, 90).toArray();
        double[] y = random.doubles(1000, -70, 20).toArray();
        double[] rank = random.doubles(1000).toArray();
        var growing = new Hull(1000);
        double above = Double.NEGATIVE_INFINITY;
        for (double limit : new double[] {0.001, 0.01, 0.5, 0.9, 1}) {
            growing.add(x, y, rank, above, limit);
            assertThat(growing.outline()).as("up to %s", limit).isEqualTo(hull(x, y, rank, limit).outline());
            above = limit;
        }
        growing.clear();
        growing.add(x, y, rank, Double.NEGATIVE_INFINITY, 0.3);
        assertThat(growing.outline()).isEqualTo(hull(x, y, rank, 0.3).outline());
    }

    @Test
    void pointsWithoutAreaGetASmallOneAndStillGrow() {
        double[] x = {3, 3, 3, 8};
        double[] y = {4, 4, 4, 4};
        double[] rank = {0, 0, 0, 1};
        var hull = new Hull(4);
        hull.add(x, y, rank, Double.NEGATIVE_INFINITY, 0);
        // an octagon of radius 0.5: 2 sqrt(2) r^2
        assertThat(hull.outline().areaM2()).isCloseTo(2 * Math.sqrt(2) / 4, within(1e-12));
        hull.add(x, y, rank, 0, 1);
        // and one drawn out by 5 metres at its full width
        assertThat(hull.outline().areaM2()).isCloseTo(2 * Math.sqrt(2) / 4 + 5, within(1e-9));
    }
}
