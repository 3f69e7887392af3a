package org.girandole.physics.separation;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.TreeSet;

import org.girandole.physics.geometry.Point2;
import org.girandole.physics.geometry.Segment;

/**
 * A sector of the circle within which every direction is treated alike.
 *
 * @param fromDeg first azimuth
 * @param widthDeg width clockwise, more than 0, at most 360
 */
record Sector(double fromDeg, double widthDeg) {
    double middleDeg() {
        return fromDeg + widthDeg / 2;
    }

    static List<Sector> around(DistanceTable table, FiringCase firing) {
        TreeSet<Double> cuts = new TreeSet<>();
        firing.tiltAzimuthDeg().ifPresent(azimuth -> addCuts(cuts, azimuth, table.sectorDeg()));
        firing.windFromDeg().ifPresent(azimuth -> addCuts(cuts, azimuth, table.sectorDeg()));
        if (cuts.isEmpty()) {
            return List.of(new Sector(0, 360));
        }
        List<Double> sorted = List.copyOf(cuts);
        List<Sector> sectors = new ArrayList<>();
        for (int i = 0; i < sorted.size(); i++) {
            double next = i + 1 < sorted.size() ? sorted.get(i + 1) : sorted.get(0) + 360;
            sectors.add(new Sector(sorted.get(i), next - sorted.get(i)));
        }
        return sectors;
    }

    private static void addCuts(TreeSet<Double> cuts, double azimuth, double sectorDeg) {
        for (double along : new double[] {azimuth, azimuth + 180}) {
            cuts.add(wrap(along - sectorDeg));
            cuts.add(wrap(along + sectorDeg));
        }
    }

    private static double wrap(double degrees) {
        double wrapped = degrees % 360;
        return (wrapped < 0 ? wrapped + 360 : wrapped) + 0.0;
    }

    /** The nearest point of the edges seen from {@code from} within the sector, its borders included. */
    Optional<Point2> nearest(Point2 from, List<Segment> edges) {
        Point2 best = null;
        for (Segment edge : edges) {
            for (Point2 candidate : candidates(from, edge)) {
                if (best == null || from.distanceM(candidate) < from.distanceM(best)) {
                    best = candidate;
                }
            }
        }
        return Optional.ofNullable(best);
    }

    /** The foot of the perpendicular, the ends, and where the sector's borders cut the edge, as far as inside. */
    private List<Point2> candidates(Point2 from, Segment edge) {
        List<Point2> candidates = new ArrayList<>();
        for (Point2 point : List.of(edge.nearest(from), edge.from(), edge.to())) {
            if (includes(from.azimuthDegTo(point))) {
                candidates.add(point);
            }
        }
        if (widthDeg < 360) {
            cut(from, edge, fromDeg).ifPresent(candidates::add);
            cut(from, edge, fromDeg + widthDeg).ifPresent(candidates::add);
        }
        return candidates;
    }

    private boolean includes(double azimuthDeg) {
        return widthDeg >= 360 || wrap(azimuthDeg - fromDeg) <= widthDeg + 1e-9;
    }

    /** Where the ray from {@code from} towards an azimuth meets the edge. */
    private static Optional<Point2> cut(Point2 from, Segment edge, double azimuthDeg) {
        double rx = Math.sin(Math.toRadians(azimuthDeg));
        double ry = Math.cos(Math.toRadians(azimuthDeg));
        double ex = edge.to().x() - edge.from().x();
        double ey = edge.to().y() - edge.from().y();
        double cross = rx * ey - ry * ex;
        if (cross == 0) {
            return Optional.empty();
        }
        double ax = edge.from().x() - from.x();
        double ay = edge.from().y() - from.y();
        double along = (ax * ey - ay * ex) / cross;
        double share = (ax * ry - ay * rx) / cross;
        return along >= 0 && share >= 0 && share <= 1
                ? Optional.of(new Point2(from.x() + along * rx, from.y() + along * ry))
                : Optional.empty();
    }
}
