package org.girandole.plan.rules.distance;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Supplier;
import org.girandole.physics.fallout.FalloutResult;
import org.girandole.physics.fallout.Footprint;
import org.girandole.plan.Plan;
import org.girandole.plan.PlannedCue;
import org.girandole.plan.Severity;
import org.girandole.plan.fallout.FalloutAreas;
import org.girandole.plan.fallout.LoadedShells;
import org.girandole.plan.rules.Basis;
import org.girandole.plan.rules.Cues;
import org.girandole.plan.rules.Findings;
import org.girandole.plan.rules.Quantity;
import org.girandole.plan.rules.RuleInfo;
import org.girandole.plan.rules.SharingRule;
import org.girandole.plan.rules.Workings;

/** Shells that come down, burst or not, outside of the boundary or on a protected place. Said once for each effect and position. */
public final class FalloutOutside implements SharingRule {
    /** Outside of the boundary; and debris, which is cold casing, on a protected place. */
    static final double MOST = 0.01;
    /** For so many findings it is looked for what would mend them; a show with more of them has another trouble. */
    private static final int MOST_CURED = 20;
    private static final RuleInfo INFO = new RuleInfo("fallout", RuleInfo.Family.DISTANCE, Severity.ERROR,
            "Shells or debris come down outside of the boundary or on a protected place.",
            "Now and then a shell does not burst in the air. It comes down whole, where nobody was to be.",
            "99 of 100 inside the boundary, no unburst shell and 1 of 100 pieces of debris on a protected place: " + Basis.COMMON_PRACTICE);

    @Override
    public RuleInfo info() {
        return INFO;
    }

    @Override
    public void check(Workings workings, Findings out) {
        Plan plan = workings.plan();
        Ground ground = Ground.of(workings);
        List<Ground.Place> places = new ArrayList<>();
        ground.boundary().ifPresent(places::add);
        places.addAll(ground.protectedPlaces());
        if (places.isEmpty() || plan.cues().stream().noneMatch(LoadedShells::concerns)) {
            return;
        }
        Map<Key, Worst> worst = new LinkedHashMap<>();
        List<FalloutAreas.Area> areas = FalloutAreas.counted(plan, workings.shells(), places.stream().map(Ground.Place::shape).toList()).areas();
        for (FalloutAreas.Area area : areas) {
            for (int i = 0; i < places.size(); i++) {
                Ground.Place place = places.get(i);
                boolean isBoundary = ground.boundary().filter(place::equals).isPresent();
                keep(worst, area, place, isBoundary, "unburst shells", share(area.result().unburst(), i, isBoundary), isBoundary ? MOST : 0);
                int at = i;
                area.result().debris().ifPresent(debris -> keep(worst, area, place, isBoundary, "debris", share(debris, at, isBoundary), MOST));
            }
        }
        Neighbours neighbours = new Neighbours(workings, ground, areas);
        List<Worst> all = List.copyOf(worst.values());
        for (int i = 0; i < all.size(); i++) {
            Worst each = all.get(i);
            report(each, i < MOST_CURED ? () -> FalloutCures.of(workings, ground, neighbours, each.area(), each.place())
                    : () -> "tilt it away, move it, use a smaller effect, or clear a wider area; how far was looked for the first " + MOST_CURED
                    + " of these only", out);
        }
    }

    /** Counted in samples: one minus 0.99 is a hair more than 0.01. */
    private static double share(Footprint footprint, int place, boolean isBoundary) {
        long inside = Math.round(footprint.inWatched().get(place) * footprint.samples());
        return (double) (isBoundary ? footprint.samples() - inside : inside) / footprint.samples();
    }

    private static void keep(Map<Key, Worst> worst, FalloutAreas.Area area, Ground.Place place, boolean isBoundary, String what, double share,
            double most) {
        if (share > most) {
            worst.merge(new Key(area.first().what(), area.first().position(), place.name()),
                    new Worst(area, place, isBoundary, what, share, most), (a, b) -> b.share() > a.share() ? b : a);
        }
    }

    private static void report(Worst worst, Supplier<String> cures, Findings out) {
        PlannedCue cue = worst.area().first();
        String percent = percent(worst.share()) + " of its " + worst.what();
        String where = worst.isBoundary() ? "outside of the boundary" : "on " + worst.place().name();
        out.report(Cues.name(cue) + ": " + percent + " come down " + where + (worst.area().estimated() ? ", by estimated data" : ""))
                .found(percent + ", of " + FalloutAreas.SAMPLES + " computed", (worst.most() == 0 ? "none " : "at most " + percent(worst.most()) + " ")
                        + where)
                .remedy(cures)
                .about(Cues.subject(cue, worst.place().name()))
                .data(Map.of("place", worst.place().name()))
                .at(cue.source());
    }

    /** Names of the places where more comes down than may. */
    static List<String> broken(List<Ground.Place> places, Optional<Ground.Place> boundary, FalloutResult result) {
        return places.stream().filter(place -> {
            int at = places.indexOf(place);
            boolean isBoundary = boundary.filter(place::equals).isPresent();
            return share(result.unburst(), at, isBoundary) > (isBoundary ? MOST : 0)
                    || result.debris().filter(debris -> share(debris, at, isBoundary) > MOST).isPresent();
        }).map(Ground.Place::name).toList();
    }

    private static String percent(double share) {
        return Quantity.number(share * 100) + " %";
    }

    private record Key(String what, String position, String place) {
    }

    private record Worst(FalloutAreas.Area area, Ground.Place place, boolean isBoundary, String what, double share, double most) {
    }
}
