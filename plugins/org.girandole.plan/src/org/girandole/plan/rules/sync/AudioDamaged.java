package org.girandole.plan.rules.sync;

import org.girandole.plan.Plan;
import org.girandole.plan.PlannedSoundtrack;
import org.girandole.plan.Severity;
import org.girandole.plan.Subject;
import org.girandole.plan.rules.Basis;
import org.girandole.plan.rules.Findings;
import org.girandole.plan.rules.Rule;
import org.girandole.plan.rules.RuleInfo;
import org.girandole.plan.script.AudioFile;

/** A recording that could be read, but with something wrong in it: cut off, or with damaged parts. */
public final class AudioDamaged implements Rule {
    private static final RuleInfo INFO = new RuleInfo("audio-damaged", RuleInfo.Family.SYNC, Severity.WARNING,
            "The audio of a soundtrack is damaged.",
            "A recording that ends in the middle, or has holes, stops the music over a running show; another player may refuse it.",
            Basis.COMMON_PRACTICE);

    @Override
    public RuleInfo info() {
        return INFO;
    }

    @Override
    public void check(Plan plan, Findings out) {
        for (PlannedSoundtrack track : plan.soundtracks()) {
            track.script().audio().ifPresent(audio -> audio.found().filter(facts -> !facts.remarks().isEmpty())
                    .ifPresent(facts -> report(track, audio, String.join("; ", facts.remarks()), out)));
        }
    }

    private static void report(PlannedSoundtrack track, AudioFile audio, String remark, Findings out) {
        out.report("The audio \"" + audio.path() + "\" of " + track.name() + " was read, but something is wrong with it: " + remark)
                .found(remark, "a whole recording")
                .remedy("copy the recording again from where it was made, and listen to it to its end")
                .about(Subject.of(track.name()))
                .at(audio.source());
    }
}
