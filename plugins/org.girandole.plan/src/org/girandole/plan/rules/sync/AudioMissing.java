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
import org.girandole.plan.script.AudioFile;

/** A soundtrack without audio, or whose audio file could not be read. */
public final class AudioMissing implements Rule {
    private static final RuleInfo INFO = new RuleInfo("audio-missing", RuleInfo.Family.SYNC, Severity.WARNING,
            "The audio of a soundtrack is not there.",
            "The show was written against a recording that nobody can compare. What the desk plays may be another cut of it.",
            Basis.COMMON_PRACTICE);

    @Override
    public RuleInfo info() {
        return INFO;
    }

    @Override
    public void check(Plan plan, Findings out) {
        for (PlannedSoundtrack track : plan.soundtracks()) {
            Optional<AudioFile> audio = track.script().audio();
            if (audio.isEmpty()) {
                out.report("Soundtrack " + track.name() + " names no audio, so its length was not checked against any recording")
                        .found("no audio", "the recording that the desk will play")
                        .remedy("add 'audio' and the file to the soundtrack")
                        .about(Subject.of(track.name())).at(track.script().source());
            } else if (audio.get().found().isEmpty()) {
                out.report("The audio \"" + audio.get().path() + "\" of " + track.name() + " could not be read: "
                        + audio.get().trouble().orElse("it is not there"))
                        .found(audio.get().trouble().orElse("no file"), "a readable recording")
                        .remedy("put the file there, or correct its name")
                        .about(Subject.of(track.name()))
                        .data(Map.of("path", audio.get().path()))
                        .at(audio.get().source());
            }
        }
    }
}
