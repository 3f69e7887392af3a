package org.girandole.plan.rules.sync;

import org.girandole.plan.Plan;
import org.girandole.plan.PlannedSoundtrack;
import org.girandole.plan.Severity;
import org.girandole.plan.Subject;
import org.girandole.plan.rules.Basis;
import org.girandole.plan.rules.Findings;
import org.girandole.plan.rules.Rule;
import org.girandole.plan.rules.RuleInfo;

/** A soundtrack whose length nobody knows. */
public final class LengthMissing implements Rule {
    private static final RuleInfo INFO = new RuleInfo("length-missing", RuleInfo.Family.SYNC, Severity.WARNING,
            "Nobody knows how long a soundtrack is.",
            "Cues after the end of the music go unnoticed, and the recording of the timecode does not know when to end.",
            Basis.COMMON_PRACTICE);

    @Override
    public RuleInfo info() {
        return INFO;
    }

    @Override
    public void check(Plan plan, Findings out) {
        for (PlannedSoundtrack track : plan.soundtracks()) {
            if (track.lengthUs().isEmpty()) {
                out.report("Nobody knows how long " + track.name() + " is, so cues after its end were not looked for")
                        .found("no length, and no audio to read it from", "a length")
                        .remedy("add 'length' to the soundtrack, or put its audio there")
                        .about(Subject.of(track.name()))
                        .at(track.script().source());
            }
        }
    }
}
