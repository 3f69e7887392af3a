package org.girandole.plan.rules.loading;

import java.util.Map;
import org.girandole.plan.Plan;
import org.girandole.plan.PlannedCue;
import org.girandole.plan.Severity;
import org.girandole.plan.allocate.Fit;
import org.girandole.plan.rules.Basis;
import org.girandole.plan.rules.Cues;
import org.girandole.plan.rules.Findings;
import org.girandole.plan.rules.Quantity;
import org.girandole.plan.rules.RuleInfo;
import org.girandole.plan.rules.ScriptIndex;
import org.girandole.plan.rules.SharingRule;
import org.girandole.plan.rules.Workings;
import org.girandole.plan.script.Rack;
import org.girandole.plan.script.ScoreItem;

/** A cue aimed at an angle that its tube cannot take. */
public final class TubeTilt implements SharingRule {
    private static final RuleInfo INFO = new RuleInfo("tube-tilt", RuleInfo.Family.LOADING, Severity.ERROR,
            "A tube cannot be set to the angle its cue wants.",
            "The crew sets the nearest angle that goes, and the shell flies where nobody has checked the distance.",
            "the script's rack");

    @Override
    public RuleInfo info() {
        return INFO;
    }

    @Override
    public void check(Workings workings, Findings out) {
        Plan plan = workings.plan();
        ScriptIndex index = workings.index();
        for (PlannedCue cue : plan.cues()) {
            index.rack(cue).ifPresent(rack -> {
                int first = cue.tube().orElseThrow().tube();
                int last = (int) Math.min(rack.tubes(), first + cue.pieces() - 1L);
                for (int tube = Math.max(1, first); tube <= last; tube++) {
                    if (!Fit.tilt(rack, tube, cue.aim())) {
                        report(cue, rack, tube, out);
                        break;
                    }
                }
            });
        }
    }

    private static void report(PlannedCue cue, Rack rack, int tube, Findings out) {
        String wanted = Quantity.degrees(cue.aim().tiltDeg()) + direction(cue.aim().lean());
        String range = Quantity.degrees(rack.tilt().fromDeg()) + " to " + Quantity.degrees(rack.tilt().toDeg());
        String allowed = rack.fixedFan()
                ? Quantity.degrees(Fit.fanDeg(rack, tube)) + " +- " + Quantity.degrees(Fit.FAN_TOLERANCE_DEG) + " to the side"
                : range;
        out.report(Cues.name(cue) + " is aimed at " + wanted + ", but tube " + tube + " of rack " + rack.name() + " can be set to " + allowed)
                .found(wanted, allowed)
                .basis(Basis.script("rack " + rack.name() + (rack.fixedFan() ? ", fan " : ", tilt ") + range, rack.source()))
                .remedy("use a rack that can be tilted so far, or another tilt")
                .about(Cues.subject(cue, rack.name()))
                .data(Map.of("rack", rack.name(), "tiltDeg", Quantity.number(cue.aim().tiltDeg())))
                .at(Cues.tubeSource(cue));
    }

    private static String direction(ScoreItem.Lean lean) {
        return switch (lean) {
            case SIDE -> "";
            case TOWARD_AUDIENCE -> " toward the audience";
            case AWAY_FROM_AUDIENCE -> " away from the audience";
            case BEARING -> " toward a bearing";
        };
    }
}
