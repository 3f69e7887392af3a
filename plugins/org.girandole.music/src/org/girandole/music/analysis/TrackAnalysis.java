package org.girandole.music.analysis;

import java.util.List;
import java.util.Optional;
import org.girandole.music.TempoMap;
import org.girandole.music.audio.AudioFacts;

/**
 * Everything that was heard in a track.
 *
 * @param facts           format, length, hash
 * @param loudness        by EBU R 128
 * @param peaks           for drawing
 * @param onsets          in order of time
 * @param beats           in order of time; empty where too little is heard
 * @param beatConfidence  0 to 1: below 0.3 the beats are hardly better than chance, above 0.7 they can be relied on
 * @param beatsPerBar     2 to 7, or 0 where no bar could be told
 * @param barConfidence   0 to 1, in the same way, for the length of the bar and where it begins
 * @param tempo           a tempo map that follows the beats, bar 1 on the first downbeat; empty without bars
 * @param sections        covering the whole track
 * @param silences        of half a second or more
 */
public record TrackAnalysis(AudioFacts facts, Loudness loudness, Peaks peaks, List<Onset> onsets, List<Beat> beats,
        double beatConfidence, int beatsPerBar, double barConfidence, Optional<TempoMap> tempo, List<Section> sections,
        List<Silence> silences) {
    public TrackAnalysis {
        onsets = List.copyOf(onsets);
        beats = List.copyOf(beats);
        sections = List.copyOf(sections);
        silences = List.copyOf(silences);
    }

    /** The onset nearest to a time, if one lies within the tolerance; of two equally near, the stronger. */
    public Optional<Onset> nearestOnset(long timeUs, long toleranceUs) {
        Onset best = null;
        for (Onset onset : onsets) {
            long away = Math.abs(onset.timeUs() - timeUs);
            long bestAway = best == null ? Long.MAX_VALUE : Math.abs(best.timeUs() - timeUs);
            if (away <= toleranceUs && (away < bestAway || away == bestAway && onset.strength() > best.strength())) {
                best = onset;
            }
        }
        return Optional.ofNullable(best);
    }
}
