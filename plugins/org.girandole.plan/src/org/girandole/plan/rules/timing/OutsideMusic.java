package org.girandole.plan.rules.timing;

import java.util.Optional;
import org.girandole.plan.PlannedCue;
import org.girandole.plan.PlannedSoundtrack;
import org.girandole.plan.Severity;
import org.girandole.plan.rules.Basis;
import org.girandole.plan.rules.Cues;
import org.girandole.plan.rules.Findings;
import org.girandole.plan.rules.Quantity;
import org.girandole.plan.rules.RuleInfo;
import org.girandole.plan.rules.ScriptIndex;
import org.girandole.plan.rules.SharingRule;
import org.girandole.plan.rules.Workings;
import org.girandole.plan.script.AudioFile;

/** A cue whose moment lies before the music begins or after it has ended. */
public final class OutsideMusic implements SharingRule {
    private static final long ONE_FRAME_US = 42_000;
    private static final RuleInfo INFO = new RuleInfo("outside-music", RuleInfo.Family.TIMING, Severity.ERROR,
            "A cue's moment lies outside of its music.",
            "After the music there is no timecode to fire by, and the audience is on its feet; most often a time was mistyped.",
            "the length of the soundtrack, as written and as recorded");

    @Override
    public RuleInfo info() {
        return INFO;
    }

    @Override
    public void check(Workings workings, Findings out) {
        ScriptIndex index = workings.index();
        for (PlannedCue cue : workings.oncePerPlace()) {
            index.soundtrack(cue).ifPresent(track -> check(cue, track, out));
        }
    }

    private static void check(PlannedCue cue, PlannedSoundtrack track, Findings out) {
        long seenUs = cue.timing().seenUs();
        Optional<Long> lengthUs = track.lengthUs();
        Optional<AudioFile> audio = track.script().audio();
        Optional<Long> soundUs = audio.flatMap(AudioFile::found).map(AudioFile.Facts::lengthUs);
        if (seenUs < 0) {
            out.report(Cues.name(cue) + " lies " + Quantity.span(-seenUs) + " before the first note")
                    .found(Quantity.moment(seenUs), limit(lengthUs))
                    .basis("show time counts from the first note")
                    .remedy("move the cue to the first note or later")
                    .about(Cues.subject(cue)).at(cue.source());
        } else if (lengthUs.isPresent() && seenUs > lengthUs.get()) {
            out.report(Cues.name(cue) + " lies " + Quantity.span(seenUs - lengthUs.get()) + " after the end of " + track.name())
                    .found(Quantity.moment(seenUs), limit(lengthUs))
                    .basis(Basis.script("length of " + track.name() + " " + Quantity.moment(lengthUs.get()), track.script().source()))
                    .remedy("move the cue before " + Quantity.moment(lengthUs.get()) + ", or correct the length")
                    .about(Cues.subject(cue)).at(cue.source());
        } else if (soundUs.isPresent() && seenUs > soundUs.get() + ONE_FRAME_US) {
            out.report(Cues.name(cue) + " lies " + Quantity.span(seenUs - soundUs.get()) + " after the end of the recording of " + track.name())
                    .found(Quantity.moment(seenUs), limit(soundUs))
                    .basis("the recording \"" + audio.orElseThrow().path() + "\"")
                    .remedy("move the cue before " + Quantity.moment(soundUs.get()) + ", or find the whole recording")
                    .about(Cues.subject(cue)).at(cue.source());
        }
    }

    private static String limit(Optional<Long> lengthUs) {
        return Quantity.moment(0) + " to " + lengthUs.map(Quantity::moment).orElse("the end of the music, unknown");
    }
}
