package org.girandole.physics.separation;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.TreeSet;

import org.girandole.physics.geometry.Disc;
import org.girandole.physics.geometry.Point2;
import org.girandole.physics.geometry.Polygon;
import org.girandole.physics.geometry.Polyline;
import org.girandole.physics.geometry.Segment;
import org.girandole.physics.geometry.Shape;

/**
 * A firing at a place held against something to be protected that has an extent. What a table asks can differ by
 * direction, so the circle is cut where it does, and in each sector the nearest point of the shape counts.
 *
 * @param requirement what is asked in the direction that is worst
 * @param foundM metres from the firing place to the nearest point of the shape in that direction
 * @param at that point
 */
public record SeparationCheck(Requirement requirement, double foundM, Point2 at) {
    /** A disc is taken as a polygon of this many corners drawn around it, wrong outwards by less than 4 mm in 100 m. */
    private static final int DISC_CORNERS = 360;

    /** True if a number is asked and the distance found is enough. */
    public boolean holds() {
        return requirement.metBy(foundM);
    }

    /** Metres that are missing; 0 if it holds, empty if an assessment is needed. */
    public Optional<Double> shortM() {
        if (requirement.assessmentNeeded()) {
            return Optional.empty();
        }
        return Optional.of(holds() ? 0 : requirement.metres().getAsDouble() - foundM);
    }

    /**
     * The worst of all directions in which the shape lies: one that needs an assessment before one that falls short,
     * then the one that falls short most.
     *
     * @param firing the article; its direction is replaced
     * @param from where it is fired
     * @param shape what is to be protected
     */
    public static SeparationCheck of(DistanceTable table, FiringCase firing, Point2 from, Shape shape) {
        if (shape.contains(from)) {
            return new SeparationCheck(worst(table, firing), 0, from);
        }
        List<Segment> edges = edges(shape);
        SeparationCheck worst = null;
        for (Sector sector : Sector.around(table, firing)) {
            Optional<Point2> nearest = sector.nearest(from, edges);
            if (nearest.isPresent()) {
                Requirement requirement = table.evaluate(firing.towards(sector.middleDeg()));
                SeparationCheck check = new SeparationCheck(requirement, from.distanceM(nearest.get()), nearest.get());
                if (worst == null || check.worseThan(worst)) {
                    worst = check;
                }
            }
        }
        return worst;
    }

    /** From inside the shape every direction counts. */
    private static Requirement worst(DistanceTable table, FiringCase firing) {
        Requirement worst = null;
        for (Sector sector : Sector.around(table, firing)) {
            Requirement requirement = table.evaluate(firing.towards(sector.middleDeg()));
            if (worst == null || !worst.assessmentNeeded() && (requirement.assessmentNeeded()
                    || requirement.metres().getAsDouble() > worst.metres().getAsDouble())) {
                worst = requirement;
            }
        }
        return worst;
    }

    private boolean worseThan(SeparationCheck other) {
        if (requirement.assessmentNeeded() || other.requirement.assessmentNeeded()) {
            return requirement.assessmentNeeded() && (!other.requirement.assessmentNeeded() || foundM < other.foundM);
        }
        return requirement.metres().getAsDouble() - foundM > other.requirement.metres().getAsDouble() - other.foundM;
    }

    private static List<Segment> edges(Shape shape) {
        if (shape instanceof Polyline line) {
            return line.segments();
        }
        if (shape instanceof Polygon area) {
            return area.edges();
        }
        Disc disc = (Disc) shape;
        if (disc.radiusM() == 0) {
            return List.of(new Segment(disc.centre(), disc.centre()));
        }
        double radius = disc.radiusM() / Math.cos(Math.PI / DISC_CORNERS);
        List<Segment> edges = new ArrayList<>();
        for (int i = 0; i < DISC_CORNERS; i++) {
            edges.add(new Segment(disc.centre().towards(360.0 * i / DISC_CORNERS, radius),
                    disc.centre().towards(360.0 * (i + 1) / DISC_CORNERS, radius)));
        }
        return edges;
    }

    /**
     * A sector of the circle within which every direction is treated alike.
     *
     * @param fromDeg first azimuth
     * @param widthDeg width clockwise, more than 0, at most 360
     */
    private record Sector(double fromDeg, double widthDeg) {

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
}
