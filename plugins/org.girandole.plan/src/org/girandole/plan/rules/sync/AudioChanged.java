package org.girandole.plan.rules.sync;

import java.util.Map;
import org.girandole.plan.Plan;
import org.girandole.plan.PlannedSoundtrack;
import org.girandole.plan.Severity;
import org.girandole.plan.Subject;
import org.girandole.plan.rules.Basis;
import org.girandole.plan.rules.Findings;
import org.girandole.plan.rules.Rule;
import org.girandole.plan.rules.RuleInfo;

/** Audio whose hash is not the one that the script was written against. */
public final class AudioChanged implements Rule {
    private static final RuleInfo INFO = new RuleInfo("audio-changed", RuleInfo.Family.SYNC, Severity.ERROR,
            "The audio is not the recording the show was written against.",
            "Another master or another cut moves every hit. The cues then miss the music by however much was cut.",
            "the script's hash of the audio");

    @Override
    public RuleInfo info() {
        return INFO;
    }

    @Override
    public void check(Plan plan, Findings out) {
        for (PlannedSoundtrack track : plan.soundtracks()) {
            track.script().audio().ifPresent(audio -> audio.found().ifPresent(facts -> audio.expectedSha256()
                    .filter(expected -> !expected.equalsIgnoreCase(facts.sha256()))
                    .ifPresent(expected -> out.report("The audio \"" + audio.path() + "\" of " + track.name()
                            + " is not the recording the show was written against")
                            .found("SHA-256 " + facts.sha256(), "SHA-256 " + expected)
                            .basis(Basis.script("hash of \"" + audio.path() + "\"", audio.source()))
                            .remedy("bring back the old recording, or listen through the show with the new one and write its hash")
                            .about(Subject.of(track.name()))
                            .data(Map.of("sha256", facts.sha256()))
                            .at(audio.source()))));
        }
    }
}
