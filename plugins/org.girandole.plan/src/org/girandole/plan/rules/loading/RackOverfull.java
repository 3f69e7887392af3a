package org.girandole.plan.rules.loading;

import java.util.List;
import org.girandole.plan.Severity;
import org.girandole.plan.Subject;
import org.girandole.plan.allocate.Fit;
import org.girandole.plan.rules.Findings;
import org.girandole.plan.rules.RuleInfo;
import org.girandole.plan.rules.SharingRule;
import org.girandole.plan.rules.Workings;
import org.girandole.plan.script.Rack;

/** A rack of many small tubes. */
public final class RackOverfull implements SharingRule {
    private static final double THREE_INCH_M = 3 * 0.0254;
    private static final int MOST = 15;
    private static final RuleInfo INFO = new RuleInfo("rack-overfull", RuleInfo.Family.LOADING, Severity.WARNING,
            "A rack holds more small tubes than a rack should.",
            "One burst in a tube upsets the whole rack; the fewer tubes there are in it, the fewer shells fly low.",
            "NFPA 1123, as quoted in a licence study guide: at most 15 mortars up to 3 in a rack");

    @Override
    public RuleInfo info() {
        return INFO;
    }

    @Override
    public void check(Workings workings, Findings out) {
        for (Rack rack : Racks.used(workings)) {
            int small = rack.rows().stream().filter(run -> run.calibreM() <= THREE_INCH_M + Fit.CALIBRE_TOLERANCE_M)
                    .mapToInt(Rack.TubeRun::count).sum();
            if (small > MOST) {
                out.report("Rack " + rack.name() + " holds " + small + " tubes of 3 in and less")
                        .found(small + " tubes", "at most " + MOST)
                        .remedy("split it into racks of " + MOST + " tubes or fewer")
                        .about(new Subject(List.of(rack.name()), List.of(rack.position())))
                        .at(rack.source());
            }
        }
    }
}
