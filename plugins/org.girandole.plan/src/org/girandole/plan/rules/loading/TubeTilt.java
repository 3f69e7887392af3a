package org.girandole.plan.rules.loading;

import java.util.Map;
import org.girandole.plan.Plan;
import org.girandole.plan.PlannedCue;
import org.girandole.plan.Severity;
import org.girandole.plan.rules.Basis;
import org.girandole.plan.rules.Cues;
import org.girandole.plan.rules.Findings;
import org.girandole.plan.rules.Quantity;
import org.girandole.plan.rules.Rule;
import org.girandole.plan.rules.RuleInfo;
import org.girandole.plan.rules.ScriptIndex;
import org.girandole.plan.script.Rack;
import org.girandole.plan.script.ScoreItem;
import org.girandole.plan.script.TiltRange;

/** A cue aimed at an angle that its tube cannot take. */
public final class TubeTilt implements Rule {
    private static final double SETTING_DEG = 1;
    private static final RuleInfo INFO = new RuleInfo("tube-tilt", RuleInfo.Family.LOADING, Severity.ERROR,
            "A tube cannot be set to the angle its cue wants.",
            "The crew sets the nearest angle that goes, and the shell flies where nobody has checked the distance.",
            "the script's rack");

    @Override
    public RuleInfo info() {
        return INFO;
    }

    @Override
    public void check(Plan plan, Findings out) {
        ScriptIndex index = ScriptIndex.of(plan);
        for (PlannedCue cue : plan.cues()) {
            index.rack(cue).ifPresent(rack -> {
                TiltRange can = angles(rack, cue);
                double tiltDeg = cue.aim().tiltDeg();
                if (tiltDeg < can.fromDeg() - SETTING_DEG || tiltDeg > can.toDeg() + SETTING_DEG) {
                    String allowed = can.fromDeg() == can.toDeg() ? Quantity.degrees(can.fromDeg())
                            : Quantity.degrees(can.fromDeg()) + " to " + Quantity.degrees(can.toDeg());
                    out.report(Cues.name(cue) + " is aimed at " + Quantity.degrees(tiltDeg) + ", but tube "
                            + cue.tube().orElseThrow().tube() + " of rack " + rack.name() + " can be set to " + allowed)
                            .found(Quantity.degrees(tiltDeg), allowed)
                            .basis(Basis.script("rack " + rack.name() + (rack.fixedFan() ? ", fixed fan " : ", tilt ")
                                    + Quantity.degrees(rack.tilt().fromDeg()) + " to " + Quantity.degrees(rack.tilt().toDeg()), rack.source())
                                    + "; set by hand to a degree")
                            .remedy("use a rack that can be tilted so far, or another tilt")
                            .about(Cues.subject(cue, rack.name()))
                            .data(Map.of("rack", rack.name(), "tiltDeg", Quantity.number(tiltDeg)))
                            .at(Cues.tubeSource(cue));
                }
            });
        }
    }

    private static TiltRange angles(Rack rack, PlannedCue cue) {
        TiltRange tilt = rack.tilt();
        if (cue.aim().lean() != ScoreItem.Lean.SIDE) {
            // The whole rack is turned or propped; what it can take to the side it can take that way.
            double most = Math.max(Math.abs(tilt.fromDeg()), Math.abs(tilt.toDeg()));
            return new TiltRange(-most, most);
        }
        if (!rack.fixedFan()) {
            return new TiltRange(Math.min(tilt.fromDeg(), tilt.toDeg()), Math.max(tilt.fromDeg(), tilt.toDeg()));
        }
        int tube = cue.tube().orElseThrow().tube();
        double share = rack.tubes() > 1 ? (tube - 1.0) / (rack.tubes() - 1) : 0;
        double angle = tilt.fromDeg() + share * (tilt.toDeg() - tilt.fromDeg());
        return new TiltRange(angle, angle);
    }
}
