package org.girandole.plan.rules.timing;

import java.util.List;
import java.util.Optional;
import org.girandole.music.analysis.Silence;
import org.girandole.plan.Plan;
import org.girandole.plan.PlannedCue;
import org.girandole.plan.PlannedSoundtrack;
import org.girandole.plan.Severity;
import org.girandole.plan.Subject;
import org.girandole.plan.rules.Basis;
import org.girandole.plan.rules.Cues;
import org.girandole.plan.rules.Findings;
import org.girandole.plan.rules.Quantity;
import org.girandole.plan.rules.Rule;
import org.girandole.plan.rules.RuleInfo;
import org.girandole.plan.script.AudioFile;

/** A finale that goes on while the music is silent. The finale is the last section that fires, or the last half minute where there are none. */
public final class SilenceUnderFinale implements Rule {
    private static final long LEAST_US = 1_000_000;
    private static final long LAST_US = 30_000_000;
    private static final RuleInfo INFO = new RuleInfo("silence-under-finale", RuleInfo.Family.TIMING, Severity.WARNING,
            "The music is silent under the finale.",
            "The loudest minute of a show without its music sounds like a fault of the desk; most often the recording was cut or faded out early.",
            Basis.COMMON_PRACTICE);

    @Override
    public RuleInfo info() {
        return INFO;
    }

    @Override
    public void check(Plan plan, Findings out) {
        for (PlannedSoundtrack track : plan.soundtracks()) {
            List<PlannedCue> cues = plan.cues().stream().filter(cue -> cue.slot() == track.slot() && cue.soundtrack().equals(track.name())).toList();
            Optional<AudioFile.Heard> heard = track.script().audio().flatMap(AudioFile::heard);
            if (!cues.isEmpty() && heard.isPresent()) {
                check(track, finale(cues), heard.get(), out);
            }
        }
    }

    private static List<PlannedCue> finale(List<PlannedCue> cues) {
        PlannedCue last = cues.stream().max((a, b) -> Long.compare(a.timing().seenUs(), b.timing().seenUs())).orElseThrow();
        if (!last.section().isEmpty()) {
            return cues.stream().filter(cue -> cue.section().equals(last.section())).toList();
        }
        return cues.stream().filter(cue -> cue.section().isEmpty() && cue.timing().seenUs() >= last.timing().seenUs() - LAST_US).toList();
    }

    private static void check(PlannedSoundtrack track, List<PlannedCue> finale, AudioFile.Heard heard, Findings out) {
        long fromUs = finale.stream().mapToLong(cue -> cue.timing().seenUs()).min().orElseThrow();
        long toUs = finale.stream().mapToLong(Cues::lastSeenUs).max().orElseThrow();
        for (Silence silence : heard.silences()) {
            long underUs = Math.min(toUs, silence.endUs()) - Math.max(fromUs, silence.startUs());
            if (underUs >= LEAST_US) {
                report(track, finale, silence, underUs, out);
            }
        }
    }

    private static void report(PlannedSoundtrack track, List<PlannedCue> finale, Silence silence, long underUs, Findings out) {
        List<PlannedCue> within = finale.stream().filter(cue -> cue.timing().seenUs() > silence.startUs() && cue.timing().seenUs() < silence.endUs()).toList();
        PlannedCue first = within.isEmpty() ? finale.get(0) : within.get(0);
        out.report("The music of " + track.name() + " is silent for " + Quantity.span(underUs) + " under the finale, from "
                + Quantity.moment(silence.startUs()) + "; " + (within.isEmpty() ? "no cue is seen in it" : "first seen in it: " + Cues.name(first)))
                .found("silence from " + Quantity.moment(silence.startUs()) + " to " + Quantity.moment(silence.endUs()),
                        "less than " + Quantity.span(LEAST_US) + " of it while the finale is seen")
                .remedy("look whether this is the whole recording; end the finale with the music, or use another cut of it")
                .about(within.isEmpty() ? Subject.of(track.name()) : Cues.subject(first))
                .at(first.source());
    }
}
