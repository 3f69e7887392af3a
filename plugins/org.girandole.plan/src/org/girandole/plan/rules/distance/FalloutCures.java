package org.girandole.plan.rules.distance;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.girandole.physics.fallout.Landings;
import org.girandole.physics.geometry.Point2;
import org.girandole.physics.geometry.Polygon;
import org.girandole.physics.geometry.Shape;
import org.girandole.physics.wind.CriticalWind;
import org.girandole.plan.PlannedCue;
import org.girandole.plan.fallout.FalloutAreas;
import org.girandole.plan.fallout.FalloutTrial;
import org.girandole.plan.rules.Quantity;
import org.girandole.plan.rules.Workings;
import org.girandole.plan.script.Point;
import org.girandole.plan.script.Site;

/**
 * What would mend it when shells come down where they may not: how much less wind, how far to move, how much less tilt, how small a shell, how
 * much more to clear. Found by asking the same computed landing places again, each cure by itself: it mends the one place and spoils none of
 * the others. A position moves with all that is fired there, and then nothing of that may come down or be fired worse than now.
 */
final class FalloutCures {
    private static final double LEAST_MPS = 0.1;
    private static final int FARTHEST_M = 300;
    /** Up to here each metre is tried, farther only each fifth at first. */
    private static final int FINE_M = 30;
    private static final int COARSE_M = 5;
    private static final int BEARING_STEP_DEG = 10;
    private static final int CALIBRE_STEP_MM = 5;
    private static final double MM_PER_M = 1000;
    private static final int TENTHS = 10;
    private static final Point2 NOWHERE = new Point2(0, 0);

    private final Workings workings;
    private final Neighbours neighbours;
    private final FalloutAreas.Area area;
    private final Ground.Place place;
    private final Optional<Ground.Place> boundary;
    /** The place to mend, and those that must not be spoiled. */
    private final List<Ground.Place> places;
    private final FalloutTrial trial;
    private final Landings planned;

    private FalloutCures(Workings workings, Ground ground, Neighbours neighbours, FalloutAreas.Area area, Ground.Place place, FalloutTrial trial) {
        this.workings = workings;
        this.neighbours = neighbours;
        this.area = area;
        this.place = place;
        this.trial = trial;
        boundary = ground.boundary();
        planned = trial.asPlanned();
        places = Stream.concat(boundary.stream(), ground.protectedPlaces().stream())
                .filter(each -> each.equals(place) || holds(planned, NOWHERE, each)).toList();
    }

    /**
     * The cures in words.
     *
     * @param neighbours what else is fired from its position
     * @param area what comes down
     * @param place where too much of it does
     */
    static String of(Workings workings, Ground ground, Neighbours neighbours, FalloutAreas.Area area, Ground.Place place) {
        FalloutTrial trial = new FalloutTrial(workings.plan(), workings.shells(), area);
        String position = area.first().position();
        List<Object> asked = List.of(place, ground.boundary(), ground.protectedPlaces(), position, position(workings, area).map(Site.Position::at),
                neighbours.areas(position).stream().map(each -> each.result().spec()).toList(), neighbours.distances(position));
        return trial.answer(asked, () -> new FalloutCures(workings, ground, neighbours, area, place, trial).text());
    }

    private static Optional<Site.Position> position(Workings workings, FalloutAreas.Area area) {
        return workings.plan().script().site().stream().flatMap(site -> site.positions().stream())
                .filter(each -> each.name().equals(area.first().position())).findFirst();
    }

    private String text() {
        List<String> cures = new ArrayList<>();
        lessWind().ifPresent(cures::add);
        move().ifPresent(cures::add);
        lessTilt().ifPresent(cures::add);
        smaller().ifPresent(cures::add);
        if (cures.isEmpty()) {
            cures.add("no move of up to " + FARTHEST_M + " m and no smaller shell of the usual kind would do: use another effect");
        }
        boundary.filter(place::equals).ifPresent(edge -> cures.add("clear " + more(edge) + " m more beyond the boundary and draw it there"));
        return String.join("; or ", cures);
    }

    /** The wind from the same side, weaker than planned, up to which all is well; empty when the wind is not at fault or not known. */
    private Optional<String> lessWind() {
        Optional<Site.Wind> wind = workings.plan().script().site().flatMap(Site::wind).filter(blows -> blows.speedMps() >= LEAST_MPS);
        if (wind.isEmpty()) {
            return Optional.empty();
        }
        CriticalWind critical = CriticalWind.find(wind.get().fromDeg(), wind.get().speedMps(), (from, speed) -> FalloutOutside.broken(places,
                boundary, FalloutAreas.again(workings.plan(), workings.shells(), area, from, speed, places.stream().map(Ground.Place::shape).toList())));
        return critical.cleanUpToMps().isPresent() && !critical.brokenBy().isEmpty() ? Optional.of(critical.text() + ": fire it in no more")
                : Optional.empty();
    }

    /** The least distance, in whole metres, by which the position may be moved, to coordinates in tenths of a metre. */
    private Optional<String> move() {
        List<Landings> others = neighbours.areas(area.first().position()).stream().filter(each -> !each.equals(area))
                .map(each -> new FalloutTrial(workings.plan(), workings.shells(), each).asPlanned()).toList();
        for (int metres = 1; metres <= FARTHEST_M; metres += metres < FINE_M ? 1 : COARSE_M) {
            if (moved(others, metres).isPresent()) {
                int least = metres <= FINE_M ? metres : metres - COARSE_M + 1;
                return Stream.iterate(least, each -> each + 1).limit(metres - least + 1L).flatMap(each -> moved(others, each).stream()).findFirst();
            }
        }
        return Optional.empty();
    }

    private Optional<String> moved(List<Landings> others, int metres) {
        Optional<Point> position = position(workings, area).map(Site.Position::at);
        for (int bearing = 0; bearing < 360 && position.isPresent(); bearing += BEARING_STEP_DEG) {
            Point2 at = new Point2(position.get().xM(), position.get().yM());
            Point2 exact = at.towards(bearing, metres);
            Point2 there = new Point2(tenths(exact.x()), tenths(exact.y()));
            Point2 by = new Point2(there.x() - at.x(), there.y() - at.y());
            if (isInside(there, plus(area.result().spec().launch().muzzle().ground(), by)) && holds(planned, by) && spoilsNothing(others, by)) {
                return Optional.of("move " + area.first().position() + " " + metres + " m towards " + bearing + "°, to (" + Quantity.metres(there.x())
                        + ", " + Quantity.metres(there.y()) + ")");
            }
        }
        return Optional.empty();
    }

    private boolean isInside(Point2... points) {
        return Stream.of(points).allMatch(point -> boundary.filter(edge -> !edge.shape().contains(point)).isEmpty());
    }

    private boolean spoilsNothing(List<Landings> others, Point2 by) {
        return neighbours.distances(area.first().position()).stream().allMatch(met -> met.from(plus(met.at(), by)))
                && others.stream().allMatch(other -> places.stream().allMatch(each -> holds(other, by, each) || !holds(other, NOWHERE, each)));
    }

    private static double tenths(double metres) {
        return Math.rint(metres * TENTHS) / TENTHS;
    }

    private static Point2 plus(Point2 a, Point2 b) {
        return new Point2(a.x() + b.x(), a.y() + b.y());
    }

    private Optional<String> lessTilt() {
        int tilt = (int) Math.ceil(Math.abs(area.first().aim().tiltDeg()));
        for (int less = tilt - 1; less >= 0; less--) {
            if (holds(trial.leaning(less), NOWHERE)) {
                return Optional.of(less == 0 ? "fire it upright" : "tilt it by " + less + " deg at most");
            }
        }
        return Optional.empty();
    }

    /** What the shell's own data would be at another calibre nobody knows; what is usual for a calibre is. */
    private Optional<String> smaller() {
        PlannedCue cue = area.first();
        double calibreMm = cue.effect().calibreM().orElse(0.0) * MM_PER_M;
        int largest = (int) (Math.ceil(calibreMm / CALIBRE_STEP_MM - 1e-6) - 1) * CALIBRE_STEP_MM;
        for (int mm = largest; mm * 2 >= calibreMm; mm -= CALIBRE_STEP_MM) {
            if (trial.usualShell(mm).filter(landings -> holds(landings, NOWHERE)).isPresent()) {
                return Optional.of("use a shell of " + mm + " mm at most, if it flies as is usual for its calibre (estimated)");
            }
        }
        return Optional.empty();
    }

    /** By how many whole metres the boundary would have to lie farther out all around. */
    private int more(Ground.Place edge) {
        Polygon cleared = (Polygon) edge.shape();
        return (int) Math.ceil(Stream.concat(Stream.of(planned.unburst()), planned.debris().stream()).mapToDouble(landed -> {
            List<Double> outside = landed.stream().filter(each -> !cleared.contains(each)).map(cleared::edgeDistanceM)
                    .sorted(Comparator.reverseOrder()).toList();
            int mayLieOutside = (int) Math.floor(FalloutOutside.MOST * landed.size() + 1e-9);
            return outside.size() > mayLieOutside ? outside.get(mayLieOutside) : 0;
        }).max().orElse(0));
    }

    /** Whether all comes down where it may when every landing place is moved alike. */
    private boolean holds(Landings landings, Point2 by) {
        return places.stream().allMatch(each -> holds(landings, by, each));
    }

    private boolean holds(Landings landings, Point2 by, Ground.Place each) {
        boolean isBoundary = boundary.filter(each::equals).isPresent();
        return share(landings.unburst(), each.shape(), by, !isBoundary) <= (isBoundary ? FalloutOutside.MOST : 0)
                && landings.debris().filter(debris -> share(debris, each.shape(), by, !isBoundary) > FalloutOutside.MOST).isEmpty();
    }

    private static double share(List<Point2> landed, Shape shape, Point2 by, boolean inside) {
        int count = 0;
        for (Point2 each : landed) {
            if (shape.contains(plus(each, by)) == inside) {
                count++;
            }
        }
        return (double) count / landed.size();
    }
}
