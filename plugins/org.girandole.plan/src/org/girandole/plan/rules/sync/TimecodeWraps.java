package org.girandole.plan.rules.sync;

import org.girandole.plan.Plan;
import org.girandole.plan.PlannedSoundtrack;
import org.girandole.plan.Severity;
import org.girandole.plan.Subject;
import org.girandole.plan.rules.Basis;
import org.girandole.plan.rules.Findings;
import org.girandole.plan.rules.Quantity;
import org.girandole.plan.rules.Rule;
import org.girandole.plan.rules.RuleInfo;
import org.girandole.timecode.ExactMicros;

/** A timecode that passes midnight while the music plays. */
public final class TimecodeWraps implements Rule {
    private static final RuleInfo INFO = new RuleInfo("timecode-wraps", RuleInfo.Family.SYNC, Severity.ERROR,
            "The timecode passes 24 hours while the soundtrack runs.",
            "After 23:59:59 the labels begin again at zero. A controller takes that for a jump backward of a day and loses "
                    + "its place.",
            "SMPTE ST 12-1: labels count one day of 24 hours");

    @Override
    public RuleInfo info() {
        return INFO;
    }

    @Override
    public void check(Plan plan, Findings out) {
        for (PlannedSoundtrack track : plan.soundtracks()) {
            track.line().ifPresent(line -> {
                long lengthUs = track.lengthUs().orElse(0L);
                long left = (long) line.rate().framesPerDay() - line.start().frameOfDay();
                long frames = line.rate().framesIn(line.prerollUs() + lengthUs);
                if (frames >= left) {
                    long atUs = line.rate().startOf(left).minus(ExactMicros.of(line.prerollUs())).ceilUs();
                    out.report("The timecode of " + track.name() + " begins at " + line.start() + " and passes midnight at "
                            + Quantity.moment(atUs))
                            .found("first label " + line.start() + ", " + Quantity.span(line.prerollUs() + lengthUs) + " of timecode",
                                    "an end before 24:00:00:00")
                            .basis(Basis.script("timecode from " + line.start(), track.script().source()) + "; " + INFO.basis())
                            .remedy("begin at an earlier label, such as 10:00:00:00")
                            .about(Subject.of(track.name()))
                            .at(track.script().source());
                }
            });
        }
    }
}
