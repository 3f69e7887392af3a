package org.girandole.plan.rules.distance;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Supplier;
import org.girandole.physics.PhysicsInputException;
import org.girandole.physics.geometry.Disc;
import org.girandole.physics.geometry.Point2;
import org.girandole.physics.geometry.Polygon;
import org.girandole.physics.geometry.Polyline;
import org.girandole.physics.geometry.Shape;
import org.girandole.plan.PlannedCue;
import org.girandole.plan.fallout.Nonsense;
import org.girandole.plan.rules.ScriptIndex;
import org.girandole.plan.rules.Workings;
import org.girandole.plan.script.Point;
import org.girandole.plan.script.Site;
import org.girandole.plan.script.SourceRef;

/** The site as the rules about distances see it. */
final class Ground {
    private final Map<String, Point> positions = new HashMap<>();
    private final List<Place> audience = new ArrayList<>();
    private final List<Place> protectedPlaces = new ArrayList<>();
    private final List<Unreadable> unreadable = new ArrayList<>();
    private Optional<Place> boundary = Optional.empty();
    private final ScriptIndex index;
    private final Nonsense nonsense;

    private Ground(Workings workings) {
        index = workings.index();
        nonsense = workings.nonsense();
        workings.plan().script().site().ifPresent(this::read);
    }

    static Ground of(Workings workings) {
        return workings.once(Ground.class, Ground::new);
    }

    /** What nothing may be computed from. */
    Nonsense nonsense() {
        return nonsense;
    }

    /** The lines on which the audience stands. */
    List<Place> audience() {
        return audience;
    }

    List<Place> protectedPlaces() {
        return protectedPlaces;
    }

    /** The edge of what is cleared of people. */
    Optional<Place> boundary() {
        return boundary;
    }

    /** Why shapes of the site cannot be computed with. */
    List<Unreadable> unreadable() {
        return unreadable;
    }

    /** Where the cue is fired: its position, moved to where its rack stands. Empty for a position that the site does not have. */
    Optional<Point> firedFrom(PlannedCue cue) {
        return Optional.ofNullable(positions.get(cue.position())).map(at -> index.firedFrom(cue, at));
    }

    private void read(Site site) {
        site.refused().forEach(this::refused);
        site.positions().forEach(position -> positions.putIfAbsent(position.name(), position.at()));
        for (Site.Area area : site.audience()) {
            shape(new Named(area.name(), Site.Part.AUDIENCE, area.source()), () -> new Polyline(points(area.points())))
                    .ifPresent(shape -> audience.add(new Place(area.name(), shape, lowest(area.points()), 1, true)));
        }
        boundary = site.boundary().flatMap(area -> shape(new Named("the boundary", Site.Part.BOUNDARY, area.source()), () -> new Polygon(points(area.points())))
                .map(shape -> new Place("the boundary", shape, lowest(area.points()), 1, false)));
        for (Site.Protected area : site.protectedPlaces()) {
            shape(new Named(area.name(), Site.Part.PROTECTED, area.source()), () -> area.radiusM().isPresent()
                    ? new Disc(points(area.points()).get(0), area.radiusM().get()) : new Polygon(points(area.points())))
                    .ifPresent(shape -> protectedPlaces.add(new Place(area.name(), shape, lowest(area.points()), area.multiple(), false)));
        }
    }

    private void refused(Site.Refused part) {
        boolean isBoundary = part.part() == Site.Part.BOUNDARY;
        if (isBoundary || part.part() == Site.Part.AUDIENCE || part.part() == Site.Part.PROTECTED) {
            String name = isBoundary ? "the boundary" : part.name();
            unreadable.add(new Unreadable(new Named(name, part.part(), part.source()), "the points that are written for it make no sense"));
        }
    }

    private Optional<Shape> shape(Named named, Supplier<Shape> made) {
        try {
            return Optional.of(made.get());
        } catch (PhysicsInputException e) {
            unreadable.add(new Unreadable(named, named.name() + " is " + e.getMessage()));
            return Optional.empty();
        }
    }

    private static List<Point2> points(List<Point> points) {
        return points.stream().map(point -> new Point2(point.xM(), point.yM())).toList();
    }

    private static double lowest(List<Point> points) {
        return points.stream().mapToDouble(Point::zM).min().orElse(0);
    }

    /** What a shape is and where it is written. */
    record Named(String name, Site.Part part, SourceRef source) {
    }

    /** A shape that cannot be computed with, and why. */
    record Unreadable(Named named, String why) {
    }

    /**
     * Something to keep away from.
     *
     * @param zM height of its lowest point
     * @param multiple how many times the table's distance it asks
     * @param audience whether people stand there
     */
    record Place(String name, Shape shape, double zM, double multiple, boolean audience) {
    }
}
