package org.girandole.plan.rules.sync;

import java.util.Map;
import java.util.Optional;
import org.girandole.plan.Plan;
import org.girandole.plan.PlannedSoundtrack;
import org.girandole.plan.Severity;
import org.girandole.plan.Subject;
import org.girandole.plan.rules.Basis;
import org.girandole.plan.rules.Findings;
import org.girandole.plan.rules.Rule;
import org.girandole.plan.rules.RuleInfo;
import org.girandole.timecode.FrameRate;

/** Soundtracks of one night that run at different frame rates. */
public final class TimecodeRate implements Rule {
    private static final RuleInfo INFO = new RuleInfo("timecode-rate", RuleInfo.Family.SYNC, Severity.WARNING,
            "Soundtracks of one show run at different frame rates.",
            "Controller and sound desk are set to one rate. Somebody has to change both between the soundtracks, in the dark.",
            Basis.COMMON_PRACTICE);

    @Override
    public RuleInfo info() {
        return INFO;
    }

    @Override
    public void check(Plan plan, Findings out) {
        PlannedSoundtrack first = null;
        for (PlannedSoundtrack track : plan.soundtracks()) {
            Optional<FrameRate> rate = track.script().rate();
            if (rate.isEmpty()) {
                continue;
            }
            if (first == null) {
                first = track;
            } else if (rate.get() != first.script().rate().orElseThrow()) {
                FrameRate other = first.script().rate().orElseThrow();
                out.report("Soundtrack " + track.name() + " runs at " + words(rate.get()) + ", but " + first.name() + " at " + words(other))
                        .found(words(rate.get()), words(other) + ", as " + first.name())
                        .remedy("give all soundtracks of the night one rate")
                        .about(Subject.of(track.name(), first.name()))
                        .data(Map.of("rate", other.words()))
                        .at(track.script().source());
            }
        }
    }

    private static String words(FrameRate rate) {
        return rate.number() + " fps" + (rate.dropFrame() ? " drop" : "");
    }
}
