package org.girandole.plan.rules.timing;

import java.util.Map;
import org.girandole.plan.Plan;
import org.girandole.plan.PlannedCue;
import org.girandole.plan.Severity;
import org.girandole.plan.rules.Basis;
import org.girandole.plan.rules.Cues;
import org.girandole.plan.rules.Findings;
import org.girandole.plan.rules.Quantity;
import org.girandole.plan.rules.RuleInfo;
import org.girandole.plan.rules.ScriptIndex;
import org.girandole.plan.rules.SharingRule;
import org.girandole.plan.rules.Shift;
import org.girandole.plan.rules.Workings;

/** A cue that is fired before the first note is heard. */
public final class FiresInPreroll implements SharingRule {
    private static final RuleInfo INFO = new RuleInfo("fires-in-preroll", RuleInfo.Family.TIMING, Severity.WARNING,
            "A cue is fired in the preroll, before the first note.",
            "The shooter must hold to fire before any music is heard, and a controller that locks late misses the cue.",
            Basis.COMMON_PRACTICE);

    @Override
    public RuleInfo info() {
        return INFO;
    }

    @Override
    public void check(Workings workings, Findings out) {
        Plan plan = workings.plan();
        ScriptIndex index = workings.index();
        for (PlannedCue cue : workings.oncePerPlace()) {
            long fireUs = cue.timing().fireUs();
            boolean beforeTimecode = index.soundtrack(cue).flatMap(track -> track.script().prerollUs())
                    .map(prerollUs -> fireUs < -prerollUs).orElse(false);
            if (fireUs >= 0 || beforeTimecode) {
                continue;
            }
            long laterUs = Shift.us(plan, -fireUs);
            out.report(Cues.name(cue) + " is fired " + Quantity.span(-fireUs) + " before the first note")
                    .found("fires at " + Quantity.moment(fireUs), "from " + Quantity.moment(0) + " on, the first note")
                    .remedy("see that the crew knows it: the shooter holds to fire before the music; or move the cue "
                            + Quantity.span(laterUs) + " later")
                    .about(Cues.subject(cue))
                    .data(Map.of("laterUs", Long.toString(laterUs)))
                    .at(cue.source());
        }
    }
}
