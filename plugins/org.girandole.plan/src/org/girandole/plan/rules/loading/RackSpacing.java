package org.girandole.plan.rules.loading;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.girandole.plan.Severity;
import org.girandole.plan.Subject;
import org.girandole.plan.allocate.Fit;
import org.girandole.plan.rules.Findings;
import org.girandole.plan.rules.Quantity;
import org.girandole.plan.rules.RuleInfo;
import org.girandole.plan.rules.SharingRule;
import org.girandole.plan.rules.Workings;
import org.girandole.plan.script.Rack;

/** Tubes that stand too close together, or whose spacing nobody wrote down. Only racks in use count. */
public final class RackSpacing implements SharingRule {
    private static final double THREE_INCH_M = 3 * 0.0254;
    private static final double TWO_INCH_M = 2 * 0.0254;
    private static final RuleInfo INFO = new RuleInfo("rack-spacing", RuleInfo.Family.LOADING, Severity.WARNING,
            "The tubes of a rack stand too close together.",
            "When a shell bursts in its tube the neighbours are struck; the closer they stand, the more of them go with it.",
            "NFPA 1123, as quoted in a licence study guide: mortars over 3 in at least 2 in or half their diameter apart; "
                    + "applied to racks, bore to bore");

    @Override
    public RuleInfo info() {
        return INFO;
    }

    @Override
    public void check(Workings workings, Findings out) {
        for (Rack rack : Racks.used(workings)) {
            if (rack.tubes() < 2) {
                continue;
            }
            if (rack.spacingM().isEmpty()) {
                out.report("Rack " + rack.name() + " does not say how far apart its tubes stand, so their spacing was not checked")
                        .found("no spacing", "a distance from centre to centre")
                        .remedy("measure the rack and add its spacing, such as 'spaced 140 mm'")
                        .about(new Subject(List.of(rack.name()), List.of(rack.position()))).at(rack.source());
            } else {
                check(rack, rack.spacingM().get(), out);
            }
        }
    }

    private static void check(Rack rack, double spacingM, Findings out) {
        Pair worst = null;
        for (Pair pair : pairs(rack)) {
            if (spacingM < pair.neededM() && (worst == null || pair.neededM() > worst.neededM())) {
                worst = pair;
            }
        }
        if (worst != null) {
            out.report("Tubes of " + Quantity.millimetres(worst.largerM()) + " in rack " + rack.name() + " stand "
                    + Quantity.millimetres(spacingM) + " apart, centre to centre")
                    .found(Quantity.millimetres(spacingM) + ", which leaves " + Quantity.millimetres(spacingM - worst.boresM()) + " between bores",
                            "at least " + Quantity.millimetres(worst.neededM()) + ", which leaves " + Quantity.millimetres(worst.clearM()))
                    .basis(worst.clearM() > 0 ? INFO.basis() : "two tubes cannot stand in one place")
                    .remedy("use a wider rack, or leave every second tube empty and say so")
                    .about(new Subject(List.of(rack.name()), List.of(rack.position())))
                    .data(Map.of("rack", rack.name(), "spacingMm", Quantity.number(worst.neededM() * 1000)))
                    .at(rack.source());
        }
    }

    private static List<Pair> pairs(Rack rack) {
        List<Pair> pairs = new ArrayList<>();
        Rack.TubeRun before = null;
        for (Rack.TubeRun run : rack.rows()) {
            if (before != null) {
                pairs.add(new Pair(before.calibreM(), run.calibreM()));
            }
            if (run.count() > 1) {
                pairs.add(new Pair(run.calibreM(), run.calibreM()));
            }
            before = run;
        }
        return pairs;
    }

    /** Two neighbours. */
    private record Pair(double leftM, double rightM) {
        double largerM() {
            return Math.max(leftM, rightM);
        }

        /** The part of the spacing that the two bores take. */
        double boresM() {
            return (leftM + rightM) / 2;
        }

        double clearM() {
            return largerM() > THREE_INCH_M + Fit.CALIBRE_TOLERANCE_M ? Math.max(TWO_INCH_M, largerM() / 2) : 0;
        }

        double neededM() {
            return boresM() + clearM();
        }
    }
}
