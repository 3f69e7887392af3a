package org.girandole.plan.rules.distance;

import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;
import org.girandole.physics.geometry.Polygon;
import org.girandole.physics.geometry.Polyline;
import org.girandole.plan.Plan;
import org.girandole.plan.Severity;
import org.girandole.plan.Subject;
import org.girandole.plan.fallout.FalloutAreas;
import org.girandole.plan.fallout.LoadedShells;
import org.girandole.plan.rules.Basis;
import org.girandole.plan.rules.Findings;
import org.girandole.plan.rules.RuleInfo;
import org.girandole.plan.rules.SharingRule;
import org.girandole.plan.rules.Workings;
import org.girandole.plan.script.Site;

/** Shells whose fallout could not be held against anything, and why. */
public final class FalloutUnchecked implements SharingRule {
    private static final RuleInfo INFO = new RuleInfo("fallout-unchecked", RuleInfo.Family.DISTANCE, Severity.ERROR,
            "Where unburst shells and debris come down was not checked.",
            "Everybody inside that area must be known and away. Nobody can clear an area that nobody has drawn.",
            Basis.COMMON_PRACTICE);

    private static final double EDGE_M = 0.5;

    @Override
    public RuleInfo info() {
        return INFO;
    }

    @Override
    public void check(Workings workings, Findings out) {
        Plan plan = workings.plan();
        if (plan.cues().stream().noneMatch(LoadedShells::concerns)) {
            return;
        }
        Ground ground = Ground.of(workings);
        Optional<Ground.Unreadable> unreadable = ground.unreadable().stream().filter(shape -> shape.named().part() == Site.Part.BOUNDARY).findFirst();
        if (unreadable.isPresent()) {
            out.report("Where unburst shells and debris come down was not checked: " + unreadable.get().why())
                    .found(unreadable.get().why(), "corners in order around the area that is cleared of people")
                    .remedy("correct the points")
                    .at(unreadable.get().named().source());
        } else if (ground.boundary().isEmpty()) {
            String why = plan.script().site().map(site -> "site " + site.name() + " has no boundary").orElse("the show has no site");
            out.report("Where unburst shells and debris come down was not checked: " + why)
                    .found(why, "the boundary of the area that is cleared of people")
                    .remedy("add 'boundary' and the corners of the cleared area to the site")
                    .at(plan.script().site().map(Site::source).orElse(plan.script().show().source()));
        }
        ground.boundary().ifPresent(boundary -> ground.audience().stream().filter(place -> standsInside(boundary, place))
                .forEach(place -> out.report("Whether unburst shells and debris come down on " + place.name() + " was not checked: it stands inside of the boundary")
                        .found(place.name() + " inside of the boundary", "everybody outside of the area that is cleared of people")
                        .remedy("draw the boundary around what is cleared, with the audience outside of it or along its edge")
                        .about(Subject.of(place.name()))
                        .at(plan.script().site().map(Site::source).orElse(plan.script().show().source()))));
        ground.unreadable().stream().filter(shape -> shape.named().part() == Site.Part.PROTECTED)
                .forEach(shape -> out.report("Whether unburst shells and debris come down on " + shape.named().name() + " was not checked: " + shape.why())
                        .found(shape.why(), "corners in order around an area")
                        .remedy("correct the points")
                        .about(Subject.of(shape.named().name()))
                        .at(shape.named().source()));
        Stream.concat(ground.nonsense().wind().stream(),
                plan.cues().stream().filter(LoadedShells::concerns).flatMap(cue -> ground.nonsense().flight(cue).stream()).distinct())
                .forEach(why -> out.report("Where shells " + why.where() + " come down was not computed: " + why.clause())
                        .found(why.clause(), why.allowed())
                        .remedy(why.remedy())
                        .about(why.subject())
                        .at(why.source()));
        Map<String, FalloutAreas.Unknown> once = new LinkedHashMap<>();
        workings.shells().unknown().stream().filter(unknown -> ground.nonsense().flight(unknown.first()).isEmpty())
                .forEach(unknown -> once.putIfAbsent(unknown.first().effect().name(), unknown));
        once.forEach((effect, unknown) -> out.report("Where " + effect + " comes down was not computed: " + unknown.why())
                .found(unknown.why(), "data that a flight can be computed from")
                .remedy("correct or add calibre, mass, rise, apex and spread of " + effect)
                .about(Subject.of(effect))
                .at(unknown.first().effect().source()));
    }

    /** Whether a corner of the line stands inside, and not merely on the edge as far as coordinates are right. */
    private static boolean standsInside(Ground.Place boundary, Ground.Place audience) {
        Polygon cleared = (Polygon) boundary.shape();
        return ((Polyline) audience.shape()).points().stream().anyMatch(point -> cleared.contains(point) && cleared.edgeDistanceM(point) > EDGE_M);
    }
}
