package org.girandole.lang.ide.show;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;
import org.girandole.physics.fallout.Footprint;
import org.girandole.plan.CheckedPlan;
import org.girandole.plan.Plan;
import org.girandole.plan.PlannedCue;
import org.girandole.plan.fallout.FalloutAreas;
import org.girandole.plan.fallout.FlightMemory;
import org.girandole.plan.rules.Workings;
import org.girandole.plan.rules.distance.AskedDistances;
import org.girandole.plan.rules.distance.SiteInWind;
import org.girandole.plan.schedule.SitePlan;
import org.girandole.plan.script.Point;
import org.girandole.plan.script.Site;
import org.girandole.protocol.CueView.Spot;
import org.girandole.protocol.SiteParams;
import org.girandole.protocol.SiteView;
import org.girandole.protocol.WindView;

/** Says the site of a plan in the words of the protocol. Distances and fallout are the plan's own, in the wind that is asked for. */
final class SiteViews {
    /** Of the computed flights, this share lies inside of an outline: the same as on the site sheet. */
    private static final double SHARE = 0.99;
    private static final double HALF_TURN_DEG = 180;
    private static final double FULL_TURN_DEG = 360;
    private static final double STRONGEST_MPS = 60;
    private static final String NO_SITE = "The show has no site. Name one in the show block: site NAME.";

    private SiteViews() {
    }

    static SiteView of(SiteParams params, CheckedPlan checked, EditedShow show) {
        return checked.plan().script().site().map(site -> of(params, checked, site, show))
                .orElseGet(() -> SiteView.nothing(params.uri(), NO_SITE));
    }

    private static SiteView of(SiteParams params, CheckedPlan checked, Site site, EditedShow show) {
        Optional<Site.Wind> tried = Optional.ofNullable(params.wind()).map(wind -> tried(wind, site));
        Plan plan = tried.map(wind -> checked.plan().inWind(Optional.of(wind))).orElse(checked.plan());
        Workings workings = new Workings(plan, new FlightMemory());
        AskedDistances asked = AskedDistances.of(workings);
        FalloutAreas fallout = FalloutAreas.of(plan, workings.shells());
        SiteInWind stand = SiteInWind.of(workings);
        Map<String, Integer> counts = new HashMap<>();
        plan.cues().forEach(cue -> counts.merge(cue.position(), 1, Integer::sum));
        return new SiteView(params.uri(), null, site.label(),
                site.positions().stream().map(p -> new SiteView.Position(p.name(), PlanViews.spot(p.at()), counts.getOrDefault(p.name(), 0),
                        stand.state(p.name()).word(), show.place(p.source()))).toList(),
                site.audience().stream().map(area -> outline(area, show)).toList(),
                site.boundary().map(area -> outline(area, show)).orElse(null),
                site.protectedPlaces().stream().map(area -> new SiteView.Outline(area.name(), spots(area.points()), area.radiusM().orElse(null),
                        show.place(area.source()))).toList(),
                site.wind().map(SiteViews::wind).orElse(null), tried.or(site::wind).map(SiteViews::wind).orElse(null), look(site),
                asked.table().map(table -> table.name() + ": " + table.title()).orElse(plan.script().show().separation()
                        .map(name -> "there is no distance table " + name).orElse("the show names no distance table")),
                asked.lines().stream().map(SiteViews::distance).toList(), fallout(fallout),
                fallout.unknown().stream().map(u -> "cue " + u.first().number() + ", " + u.first().label() + ": " + u.why()).toList(),
                PlanViews.findings(stand.findings(), plan, show));
    }

    /** The wind to try. Speeds are kept to what blows on earth, so that a slip of the mouse asks for no nonsense. */
    private static Site.Wind tried(WindView wind, Site site) {
        double fromDeg = ((wind.fromDeg() % FULL_TURN_DEG) + FULL_TURN_DEG) % FULL_TURN_DEG;
        double speedMps = Math.max(0, Math.min(STRONGEST_MPS, wind.speedMps()));
        Optional<Double> gust = Optional.ofNullable(wind.gustMps()).map(mps -> Math.max(speedMps, Math.min(STRONGEST_MPS, mps)));
        return new Site.Wind(fromDeg, speedMps, gust, site.wind().map(Site.Wind::source).orElse(site.source()));
    }

    private static WindView wind(Site.Wind wind) {
        return new WindView(wind.fromDeg(), wind.speedMps(), wind.gustMps().orElse(null));
    }

    /** The audience looks from the nearest of its lines at the middle of the positions. */
    private static double look(Site site) {
        double x = site.positions().stream().mapToDouble(p -> p.at().xM()).average().orElse(0);
        double y = site.positions().stream().mapToDouble(p -> p.at().yM()).average().orElse(0);
        return (new SitePlan(Optional.of(site)).audienceBearingDeg(new Point(x, y)) + HALF_TURN_DEG) % FULL_TURN_DEG;
    }

    private static SiteView.Outline outline(Site.Area area, EditedShow show) {
        return new SiteView.Outline(area.name(), spots(area.points()), null, show.place(area.source()));
    }

    private static List<Spot> spots(List<Point> points) {
        return points.stream().map(PlanViews::spot).toList();
    }

    private static SiteView.Distance distance(AskedDistances.Line line) {
        return new SiteView.Distance(line.position(), line.place(), line.audience(), line.foundM(),
                line.asked().metres().isPresent() ? line.asked().metres().getAsDouble() : null, line.asked().assessment().orElse(null),
                line.asked().metBy(line.foundM()), !line.asked().estimated().isEmpty(),
                line.asked().basis(), line.cue().number());
    }

    private static List<SiteView.Fallout> fallout(FalloutAreas areas) {
        List<SiteView.Fallout> out = new ArrayList<>();
        for (FalloutAreas.Area area : areas.areas()) {
            add(out, area, "unburst", a -> Optional.of(a.result().unburst()));
            add(out, area, "debris", a -> a.result().debris());
        }
        return out;
    }

    private static void add(List<SiteView.Fallout> out, FalloutAreas.Area area, String kind, Function<FalloutAreas.Area, Optional<Footprint>> of) {
        PlannedCue cue = area.first();
        of.apply(area).ifPresent(footprint -> footprint.areas().stream().filter(each -> each.share() == SHARE)
                .forEach(each -> out.add(new SiteView.Fallout(cue.number(), cue.position(), kind, SHARE, area.estimated(),
                        each.outline().corners().stream().map(corner -> new Spot(corner.x(), corner.y(), 0)).toList()))));
    }
}
