package org.girandole.plan.fallout;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.concurrent.ConcurrentHashMap;
import org.girandole.physics.PhysicsInputException;
import org.girandole.physics.geometry.Point2;
import org.girandole.physics.geometry.Polygon;
import org.girandole.plan.Plan;
import org.girandole.plan.PlannedCue;
import org.girandole.plan.Subject;
import org.girandole.plan.rules.Quantity;
import org.girandole.plan.rules.ScriptIndex;
import org.girandole.plan.script.Effect;
import org.girandole.plan.script.Point;
import org.girandole.plan.script.Rack;
import org.girandole.plan.script.Site;
import org.girandole.plan.script.SourceRef;

/**
 * What of a plan cannot be meant, so that no distance and no flight may be computed from it. What is wrong with each, the language or another
 * rule has said; here it is said what therefore is not known.
 */
public final class Nonsense {
    private static final Set<String> FOR_DISTANCES = Set.of("calibre", "apex", "tilt");
    private static final Set<String> FOR_FLIGHTS = Set.of("calibre", "apex", "mass", "rise", "spread");
    private static final Set<Site.Part> AIR = Set.of(Site.Part.AIR, Site.Part.ELEVATION);

    private final ScriptIndex index;
    private final Optional<Polygon> boundary;
    private final Optional<Why> wind;
    private final Optional<Why> air;
    private final Map<String, Site.Position> positions = new HashMap<>();
    private final Map<Place, Optional<Why>> places = new ConcurrentHashMap<>();

    private Nonsense(Plan plan, ScriptIndex index) {
        this.index = index;
        Optional<Site> site = plan.script().site();
        site.ifPresent(s -> s.positions().forEach(position -> positions.putIfAbsent(position.name(), position)));
        boundary = site.flatMap(Site::boundary).flatMap(Nonsense::polygon);
        wind = wind(plan);
        air = site.flatMap(s -> refused(s, AIR, "a value that can be meant", "correct it, or take the line out"));
    }

    /** @param index that of the plan */
    public static Nonsense of(Plan plan, ScriptIndex index) {
        return new Nonsense(plan, index);
    }

    /** Why nothing that the wind bears on may be computed; empty when it may. */
    static Optional<Why> wind(Plan plan) {
        return plan.script().site().flatMap(site -> refused(site, Set.of(Site.Part.WIND), "where the wind comes from, and its speed",
                "write it as 'wind from 240 deg at 5 m/s'"));
    }

    /**
     * What cannot be meant.
     *
     * @param where which firings it concerns, such as {@code from S} or {@code of Peony}
     * @param clause what it is, as a clause that follows a colon
     */
    public record Why(String where, String clause, String allowed, String remedy, Subject subject, SourceRef source) {
    }

    /** Why no distance from where the cue is fired may be computed; empty when it may. */
    public Optional<Why> distance(PlannedCue cue) {
        return wind.or(() -> fired(cue)).or(() -> effect(cue.effect(), FOR_DISTANCES));
    }

    /** Why nothing that the wind bears on may be computed; empty when it may. */
    public Optional<Why> wind() {
        return wind;
    }

    /** Why no flight of the cue may be computed in any wind; empty when it may. */
    public Optional<Why> flight(PlannedCue cue) {
        return air.or(() -> fired(cue)).or(() -> effect(cue.effect(), FOR_FLIGHTS));
    }

    /** How far a place lies outside of the boundary; empty inside, on the edge, and where there is no boundary to compute with. */
    public Optional<Double> outsideM(Point place) {
        Point2 at = new Point2(place.xM(), place.yM());
        return boundary.filter(cleared -> !cleared.contains(at)).map(cleared -> cleared.edgeDistanceM(at));
    }

    private Optional<Why> fired(PlannedCue cue) {
        if (cue.script().leanRefused()) {
            return Optional.of(new Why("of " + cue.effect().name() + " at " + cue.position(), "the tilt that is written makes no sense", "a tilt that can be meant", "correct the tilt",
                    new Subject(List.of(cue.effect().name()), List.of(cue.position())), cue.source()));
        }
        Optional<Rack> rack = index.rack(cue).filter(placed -> placed.at().isPresent());
        return Optional.ofNullable(positions.get(cue.position()))
                .flatMap(position -> places.computeIfAbsent(new Place(position.name(), rack.map(Rack::name)), place -> place(position, rack)));
    }

    private Optional<Why> place(Site.Position position, Optional<Rack> placed) {
        Optional<Why> outside = outsideM(position.at()).map(metres -> outside("position " + position.name() + " lies ", metres, position,
                position.source()));
        return outside.or(() -> placed.flatMap(rack -> outsideM(rack.from(position.at()))
                .map(metres -> outside("rack " + rack.name() + " stands ", metres, position, rack.source()))));
    }

    private static Why outside(String what, double metres, Site.Position position, SourceRef source) {
        return new Why("from " + position.name(), what + Quantity.metres(metres) + " outside of the boundary", "a place inside of the boundary",
                "correct the coordinates of the position or of the boundary", new Subject(List.of(), List.of(position.name())), source);
    }

    private static Optional<Why> effect(Effect effect, Set<String> needed) {
        if (effect.refused().isEmpty()) {
            return Optional.empty();
        }
        List<String> wrong = effect.refused().stream().filter(needed::contains).toList();
        return wrong.isEmpty() ? Optional.empty()
                : Optional.of(new Why("of " + effect.name(), "the " + String.join(" and the ", wrong) + " that is written makes no sense",
                        "a value that can be meant", "correct it, or take the line out", Subject.of(effect.name()), effect.source()));
    }

    private static Optional<Why> refused(Site site, Set<Site.Part> parts, String allowed, String remedy) {
        return site.refused().stream().filter(part -> parts.contains(part.part())).findFirst()
                .map(part -> new Why("on site " + site.name(), "the " + part.name() + " that is written makes no sense", allowed, remedy,
                        Subject.of(site.name()), part.source()));
    }

    private static Optional<Polygon> polygon(Site.Area area) {
        try {
            return Optional.of(new Polygon(area.points().stream().map(point -> new Point2(point.xM(), point.yM())).toList()));
        } catch (PhysicsInputException e) {
            // An area that is none has no outside; the rules that need it say so.
            return Optional.empty();
        }
    }

    /** Where something is fired: the name of a position, and that of the rack that has a place of its own there. */
    private record Place(String position, Optional<String> rack) {
    }
}
