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
import org.girandole.plan.script.AudioFile;

/** A recording that was not listened to: what depends on its hits and silences was not checked. */
public final class AudioUnheard implements Rule {
    private static final RuleInfo INFO = new RuleInfo("audio-unheard", RuleInfo.Family.SYNC, Severity.INFO,
            "The audio of a soundtrack was not listened to.",
            "Whether cues meet the hits of the music, and whether a finale runs into silence, was not checked.",
            Basis.COMMON_PRACTICE);

    @Override
    public RuleInfo info() {
        return INFO;
    }

    @Override
    public void check(Plan plan, Findings out) {
        for (PlannedSoundtrack track : plan.soundtracks()) {
            track.script().audio().filter(audio -> audio.heard().isEmpty()).ifPresent(audio -> audio.found()
                    .ifPresent(facts -> report(track, audio, facts, out)));
        }
    }

    private static void report(PlannedSoundtrack track, AudioFile audio, AudioFile.Facts facts, Findings out) {
        out.report("The audio \"" + audio.path() + "\" of " + track.name() + " is too long to be listened to at every check, so cues were not held"
                + " against its hits and silences")
                .found(Quantity.moment(facts.lengthUs()), "a recording that was listened to")
                .remedy("run 'girandole marks find' on it once; what was heard is remembered")
                .about(Subject.of(track.name()))
                .at(audio.source());
    }
}
