package org.girandole.plan.rules.sync;

import java.util.Map;
import org.girandole.plan.Plan;
import org.girandole.plan.PlannedSoundtrack;
import org.girandole.plan.Severity;
import org.girandole.plan.Subject;
import org.girandole.plan.rules.Findings;
import org.girandole.plan.rules.Quantity;
import org.girandole.plan.rules.Rule;
import org.girandole.plan.rules.RuleInfo;
import org.girandole.plan.script.AudioFile;

/** A written length that is not the recording's. */
public final class AudioLength implements Rule {
    private static final long ONE_FRAME_US = 42_000;
    private static final RuleInfo INFO = new RuleInfo("audio-length", RuleInfo.Family.SYNC, Severity.WARNING,
            "The written length of a soundtrack is not that of its audio.",
            "Either the recording is another cut, or the show ends where the music does not.",
            "the audio file, to one frame of timecode");

    @Override
    public RuleInfo info() {
        return INFO;
    }

    @Override
    public void check(Plan plan, Findings out) {
        for (PlannedSoundtrack track : plan.soundtracks()) {
            track.script().audio().flatMap(AudioFile::found).ifPresent(facts -> track.script().lengthUs()
                    .filter(lengthUs -> Math.abs(lengthUs - facts.lengthUs()) > ONE_FRAME_US)
                    .ifPresent(lengthUs -> out.report("Soundtrack " + track.name() + " is said to last " + Quantity.moment(lengthUs)
                            + ", but its audio lasts " + Quantity.moment(facts.lengthUs()))
                            .found(Quantity.moment(lengthUs), Quantity.moment(facts.lengthUs()) + ", to " + Quantity.span(ONE_FRAME_US))
                            .basis("the recording \"" + track.script().audio().orElseThrow().path() + "\"")
                            .remedy("write 'length " + Quantity.moment(facts.lengthUs()) + "', or find the right recording")
                            .about(Subject.of(track.name()))
                            .data(Map.of("lengthUs", Long.toString(facts.lengthUs())))
                            .at(track.script().source())));
        }
    }
}
