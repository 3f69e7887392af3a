package org.girandole.plan.rules.timing;

import java.util.ArrayList;
import java.util.List;
import java.util.NavigableMap;
import java.util.Optional;
import java.util.TreeMap;
import org.girandole.music.MusicTimeException;
import org.girandole.music.Rational;
import org.girandole.music.analysis.Onset;
import org.girandole.plan.PlannedCue;
import org.girandole.plan.PlannedSoundtrack;
import org.girandole.plan.script.AudioFile;
import org.girandole.plan.script.TimeExpr;

/** The hits that were heard in a soundtrack, and cues that claim to be on one. */
final class Hits {
    /** Sound and picture nearer than this are seen as one: ITU-R BT.1359-1 gives 45 ms for sound that comes early (from memory). */
    static final long TOGETHER_US = 45_000;
    /** Farther from every hit than this, no hit was meant. */
    static final long NEAR_US = 150_000;
    /** A cue is told of the hits that are stronger than half of all; a weak one beside it is no reason to call it off. */
    private static final double STRONG = 0.5;

    private final PlannedSoundtrack track;
    private final NavigableMap<Long, Onset> onsets = new TreeMap<>();

    private Hits(PlannedSoundtrack track, List<Onset> heard) {
        this.track = track;
        heard.forEach(onset -> onsets.putIfAbsent(onset.timeUs(), onset));
    }

    /** Empty when nobody listened to the recording, or there is none. */
    static Optional<Hits> of(PlannedSoundtrack track) {
        return track.script().audio().flatMap(AudioFile::heard).map(heard -> new Hits(track, heard.onsets()));
    }

    /**
     * The hit that a cue just misses. A cue claims a hit when its moment is a mark, a whole beat of a bar or a clock time, with nothing added;
     * what counts on from there follows a rhythm of its own.
     */
    Optional<Onset> missedBy(PlannedCue cue, long stepUs) {
        long seenUs = cue.timing().seenUs();
        if (claimedUs(cue.script().at()).filter(us -> us == seenUs).isEmpty() || !near(seenUs, Math.max(TOGETHER_US, stepUs)).isEmpty()) {
            return Optional.empty();
        }
        return near(seenUs, NEAR_US).stream().filter(onset -> onset.strength() >= STRONG)
                .min((a, b) -> Long.compare(Math.abs(a.timeUs() - seenUs), Math.abs(b.timeUs() - seenUs)));
    }

    private Optional<Long> claimedUs(TimeExpr at) {
        if (!at.steps().isEmpty()) {
            return Optional.empty();
        }
        if (at.anchor() instanceof TimeExpr.AtClock clock) {
            return Optional.of(clock.us());
        }
        if (at.anchor() instanceof TimeExpr.AtMark mark) {
            return Optional.ofNullable(track.marksUs().get(mark.mark()));
        }
        if (at.anchor() instanceof TimeExpr.AtBar bar && bar.beat().isWhole() && track.tempo().isPresent()) {
            try {
                return Optional.of(track.tempo().get().timeUsOfBar(bar.bar(), Rational.of(bar.beat().floor())));
            } catch (MusicTimeException e) {
                // A beat that its bar has not; the planner says so.
                return Optional.empty();
            }
        }
        return Optional.empty();
    }

    private List<Onset> near(long us, long withinUs) {
        return new ArrayList<>(onsets.subMap(us - withinUs, true, us + withinUs, true).values());
    }
}
