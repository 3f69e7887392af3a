package org.girandole.plan.rules.sync;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.girandole.plan.Plan;
import org.girandole.plan.PlannedSoundtrack;
import org.girandole.plan.Severity;
import org.girandole.plan.Subject;
import org.girandole.plan.rules.Findings;
import org.girandole.plan.rules.Rule;
import org.girandole.plan.rules.RuleInfo;

/** A soundtrack with cues but without a timecode that could be computed. */
public final class TimecodeMissing implements Rule {
    private static final RuleInfo INFO = new RuleInfo("timecode-missing", RuleInfo.Family.SYNC, Severity.ERROR,
            "A soundtrack has no timecode.",
            "Without timecode no cue has a moment that the controller knows.",
            "a timecode needs a rate, a first label and a preroll");

    @Override
    public RuleInfo info() {
        return INFO;
    }

    @Override
    public void check(Plan plan, Findings out) {
        for (PlannedSoundtrack track : plan.soundtracks()) {
            if (track.line().isPresent()) {
                continue;
            }
            List<String> missing = new ArrayList<>();
            if (track.script().rate().isEmpty()) {
                missing.add("frame rate");
            }
            if (track.script().start().isEmpty()) {
                missing.add("first label");
            }
            if (track.script().prerollUs().isEmpty()) {
                missing.add("preroll");
            }
            String words = missing.isEmpty() ? "a timecode that can be counted" : String.join(", ", missing);
            out.report("Soundtrack " + track.name() + " has no timecode: " + words + " missing")
                    .found("no " + words, "frame rate, first label and preroll")
                    .remedy("add 'timecode 25 fps from 10:00:00:00' and 'preroll 60 s' to the soundtrack")
                    .about(Subject.of(track.name()))
                    .data(Map.of("missing", String.join(",", missing)))
                    .at(track.script().source());
        }
    }
}
