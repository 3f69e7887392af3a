package org.girandole.plan.rules.loading;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.IntStream;
import org.girandole.plan.Plan;
import org.girandole.plan.Severity;
import org.girandole.plan.Subject;
import org.girandole.plan.allocate.Fit;
import org.girandole.plan.rules.Basis;
import org.girandole.plan.rules.Findings;
import org.girandole.plan.rules.Quantity;
import org.girandole.plan.rules.RuleInfo;
import org.girandole.plan.rules.SharingRule;
import org.girandole.plan.rules.Workings;
import org.girandole.plan.script.Point;
import org.girandole.plan.script.Rack;
import org.girandole.plan.script.Site;

/** A light rack close to heavy shells. Only racks in use whose places the script says can be compared. */
public final class RackLightBesideHeavy implements SharingRule {
    private static final double HEAVY_M = 0.125;
    private static final double LIGHT_M = 0.050;
    private static final double APART_M = 2;
    private static final RuleInfo INFO = new RuleInfo("rack-light-beside-heavy", RuleInfo.Family.LOADING, Severity.WARNING,
            "A light rack stands close to heavy shells.",
            "A heavy shell that bursts in its tube, or only its recoil, upsets a light rack; what is loaded there then flies low.",
            Basis.COMMON_PRACTICE);

    /** A rack in use, and where on the site it stands. */
    private record Placed(Rack rack, Point at) {
        double metresTo(Placed other) {
            return Math.hypot(at.xM() - other.at().xM(), at.yM() - other.at().yM());
        }
    }

    @Override
    public RuleInfo info() {
        return INFO;
    }

    @Override
    public void check(Workings workings, Findings out) {
        Plan plan = workings.plan();
        List<Placed> light = new ArrayList<>();
        List<Placed> heavy = new ArrayList<>();
        for (Rack rack : Racks.used(workings)) {
            Optional<Placed> placed = place(plan, rack);
            if (placed.isPresent() && rack.rows().stream().allMatch(run -> run.calibreM() < LIGHT_M - Fit.CALIBRE_TOLERANCE_M)) {
                light.add(placed.get());
            } else if (placed.isPresent() && heaviestLoadedM(plan, rack) >= HEAVY_M - Fit.CALIBRE_TOLERANCE_M) {
                heavy.add(placed.get());
            }
        }
        heavy.forEach(each -> check(plan, each, light, out));
    }

    private static void check(Plan plan, Placed heavy, List<Placed> light, Findings out) {
        List<Placed> close = light.stream().filter(rack -> heavy.metresTo(rack) < APART_M)
                .sorted(Comparator.comparingDouble(heavy::metresTo)).toList();
        if (close.isEmpty()) {
            return;
        }
        Rack nearest = close.get(0).rack();
        double metres = heavy.metresTo(close.get(0));
        out.report("Rack " + nearest.name() + " of " + Quantity.millimetres(widestM(nearest)) + " stands beside rack "
                + heavy.rack().name() + ", which is loaded with " + Quantity.millimetres(heaviestLoadedM(plan, heavy.rack()))
                + (close.size() > 1 ? ", and so " + (close.size() == 2 ? "does " : "do ") + Quantity.count(close.size() - 1, "more light rack", "more light racks") : ""))
                .found(Quantity.metres(metres) + " from place to place", "at least " + Quantity.metres(APART_M))
                .remedy("set the light rack further off, or put its effects on the other side of the position")
                .about(new Subject(List.of(heavy.rack().name(), nearest.name()), List.of(heavy.rack().position())))
                .data(Map.of("rack", nearest.name(), "heavyRack", heavy.rack().name()))
                .at(heavy.rack().source());
    }

    private static Optional<Placed> place(Plan plan, Rack rack) {
        return plan.script().site().map(Site::positions).orElse(List.of()).stream()
                .filter(position -> position.name().equals(rack.position())).findFirst()
                .flatMap(position -> rack.at().map(at -> new Placed(rack,
                        new Point(position.at().xM() + at.xM(), position.at().yM() + at.yM()))));
    }

    private static double widestM(Rack rack) {
        return rack.rows().stream().mapToDouble(Rack.TubeRun::calibreM).max().orElse(0);
    }

    /** The largest calibre among the tubes that are loaded; a chain takes several in a row. */
    private static double heaviestLoadedM(Plan plan, Rack rack) {
        return plan.cues().stream().flatMapToDouble(cue -> cue.tube().filter(tube -> tube.rack().equals(rack.name())).stream()
                .flatMapToInt(tube -> IntStream.range(tube.tube(), tube.tube() + cue.pieces()))
                .mapToObj(rack::runOf).flatMap(Optional::stream).mapToDouble(Rack.TubeRun::calibreM)).max().orElse(0);
    }
}
