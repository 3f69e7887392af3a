package org.girandole.physics.separation;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.Predicate;

import org.girandole.physics.geometry.Disc;
import org.girandole.physics.geometry.Point2;
import org.girandole.physics.geometry.Polygon;
import org.girandole.physics.geometry.Polyline;
import org.girandole.physics.geometry.Segment;
import org.girandole.physics.geometry.Shape;

/**
 * What a table asks of one firing. That can differ by direction, so the circle is cut where it does. It hangs on no place, so that it serves all
 * places from which the same is fired.
 */
public final class Asked {
    /** A disc is taken as a polygon of this many corners drawn around it, wrong outwards by less than 4 mm in 100 m. */
    private static final int DISC_CORNERS = 360;

    private final List<Directed> directions;

    /** What is asked in all directions of a sector. */
    private record Directed(Sector sector, Requirement requirement) {
    }

    private Asked(List<Directed> directions) {
        this.directions = directions;
    }

    /** @param firing the article; its direction is replaced */
    public static Asked of(DistanceTable table, FiringCase firing) {
        return new Asked(Sector.around(table, firing).stream()
                .map(sector -> new Directed(sector, table.evaluate(firing.towards(sector.middleDeg())))).toList());
    }

    /** What is asked in the direction in which that is most; an assessment is more than any number. */
    public Requirement most() {
        Requirement most = null;
        for (Directed directed : directions) {
            Requirement requirement = directed.requirement;
            if (most == null || !most.assessmentNeeded() && (requirement.assessmentNeeded()
                    || requirement.metres().getAsDouble() > most.metres().getAsDouble())) {
                most = requirement;
            }
        }
        return most;
    }

    /** Whether something of this kind is asked in any direction. */
    public boolean anywhere(Predicate<Requirement> kind) {
        return directions.stream().anyMatch(directed -> kind.test(directed.requirement));
    }

    /**
     * What is asked against what is found, in the worst of all directions in which a shape lies: one that needs an assessment before one that
     * falls short, then the one that falls short most. From inside the shape every direction counts.
     *
     * @param from where it is fired
     * @param shape what is to be protected
     */
    public SeparationCheck against(Point2 from, Shape shape) {
        if (shape.contains(from)) {
            return new SeparationCheck(most(), 0, from);
        }
        List<Segment> edges = edges(shape);
        SeparationCheck worst = null;
        for (Directed directed : directions) {
            Optional<Point2> nearest = directed.sector.nearest(from, edges);
            if (nearest.isPresent()) {
                SeparationCheck check = new SeparationCheck(directed.requirement, from.distanceM(nearest.get()), nearest.get());
                if (worst == null || check.worseThan(worst)) {
                    worst = check;
                }
            }
        }
        return worst;
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
}
