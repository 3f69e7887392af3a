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

/** A cue that would have to be fired before there is any timecode to fire it by. */
public final class FiresBeforeTimecode implements SharingRule {
    private static final RuleInfo INFO = new RuleInfo("fires-before-timecode", RuleInfo.Family.TIMING, Severity.ERROR,
            "A cue would have to be fired before its timecode begins.",
            "The controller waits for timecode. What is due before the first label of the line is never fired, or is fired late.",
            "the script's preroll");

    @Override
    public RuleInfo info() {
        return INFO;
    }

    @Override
    public void check(Workings workings, Findings out) {
        Plan plan = workings.plan();
        ScriptIndex index = workings.index();
        for (PlannedCue cue : workings.oncePerPlace()) {
            index.soundtrack(cue).filter(track -> track.script().prerollUs().isPresent()).ifPresent(track -> {
                long prerollUs = track.script().prerollUs().get();
                long earlyUs = -prerollUs - cue.timing().fireUs();
                if (earlyUs <= 0) {
                    return;
                }
                long laterUs = Shift.us(plan, earlyUs);
                out.report(Cues.name(cue) + " would have to be fired " + Quantity.span(earlyUs) + " before the timecode begins")
                        .found("fires at " + Quantity.moment(cue.timing().fireUs()),
                                "from " + Quantity.moment(-prerollUs) + " on, where the timecode begins")
                        .basis(Basis.script("preroll " + Quantity.span(prerollUs), track.script().source()))
                        .remedy("move the cue at least " + Quantity.span(laterUs) + " later, or make the preroll at least "
                                + Quantity.atLeast(-cue.timing().fireUs()))
                        .about(Cues.subject(cue))
                        .data(Map.of("laterUs", Long.toString(laterUs), "prerollUs", Long.toString(-cue.timing().fireUs())))
                        .at(cue.source());
            });
        }
    }
}
