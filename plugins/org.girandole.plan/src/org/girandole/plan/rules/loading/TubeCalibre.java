package org.girandole.plan.rules.loading;

import java.util.Map;
import java.util.Optional;
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

/** A shell in a tube of another calibre. */
public final class TubeCalibre implements SharingRule {
    private static final RuleInfo INFO = new RuleInfo("tube-calibre", RuleInfo.Family.LOADING, Severity.ERROR,
            "An effect is loaded into a tube of another calibre.",
            "Too tight, it sticks and bursts in the tube; too loose, it leaves slowly, bursts low and drifts.",
            "calibre and tube agree to half a millimetre; whether 75 mm may stand for 3 in is for a person to say");

    @Override
    public RuleInfo info() {
        return INFO;
    }

    @Override
    public void check(Workings workings, Findings out) {
        Plan plan = workings.plan();
        ScriptIndex index = workings.index();
        for (PlannedCue cue : plan.cues()) {
            index.rack(cue).ifPresent(rack -> cue.effect().calibreM().ifPresent(calibreM -> misfit(rack, cue, calibreM)
                    .ifPresent(run -> out.report(Cues.name(cue) + " of " + Quantity.millimetres(calibreM) + " is loaded into a tube of "
                            + Quantity.millimetres(run.calibreM()) + " (rack " + rack.name() + ", tube " + cue.tube().orElseThrow().tube() + ")")
                            .found(Quantity.millimetres(calibreM), Quantity.millimetres(run.calibreM()))
                            .basis(Basis.script("tube of " + Quantity.millimetres(run.calibreM()), run.source()) + "; " + INFO.basis())
                            .remedy("use a tube of " + Quantity.millimetres(calibreM) + ", or leave the tube out and let it be chosen")
                            .about(Cues.subject(cue, rack.name()))
                            .data(Map.of("rack", rack.name(), "calibreMm", Quantity.number(calibreM * 1000)))
                            .at(Cues.tubeSource(cue)))));
        }
    }

    private static Optional<Rack.TubeRun> misfit(Rack rack, PlannedCue cue, double calibreM) {
        int first = cue.tube().orElseThrow().tube();
        int last = (int) Math.min(rack.tubes(), first + cue.pieces() - 1L);
        int start = 1;
        for (Rack.TubeRun run : rack.rows()) {
            int end = start + run.count() - 1;
            boolean used = first <= end && last >= start;
            if (used && !Fit.calibre(calibreM, run.calibreM())) {
                return Optional.of(run);
            }
            start = end + 1;
        }
        return Optional.empty();
    }
}
