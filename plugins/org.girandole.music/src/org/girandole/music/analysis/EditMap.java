package org.girandole.music.analysis;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalLong;
import org.girandole.music.Rational;
import org.girandole.music.TempoMap;

/**
 * From an old edit of a track to a new one: stretches that both have, in order of time, and what was cut and inserted between
 * them. Immutable.
 *
 * @param oldLengthUs of the old track
 * @param newLengthUs of the new track
 * @param stretches   what both have; neither overlapping nor crossing
 * @param changes     what lies between
 * @param confidence  0 to 1: how alike the stretches are, and how much of the music they cover; below 0.5 these are probably not two edits of one piece
 */
public record EditMap(long oldLengthUs, long newLengthUs, List<Stretch> stretches, List<Change> changes, double confidence) {

    /** The same music: from {@code oldStartUs} to {@code oldEndUs} in the old track, in the new one from and to the others. */
    public record Stretch(long oldStartUs, long oldEndUs, long newStartUs, long newEndUs) {
        /** Time in the new track; the speed is the same throughout the stretch. */
        public long toNew(long oldUs) {
            double share = (double) (oldUs - oldStartUs) / Math.max(1, oldEndUs - oldStartUs);
            return newStartUs + Math.round(share * (newEndUs - newStartUs));
        }

        /** How much faster the new track runs; 1.005 is half a per cent. */
        public double speed() {
            return (double) (oldEndUs - oldStartUs) / Math.max(1, newEndUs - newStartUs);
        }
    }

    /** What happened between two stretches. */
    public enum Kind {
        /** Old music is gone. */
        CUT,
        /** New music has come in. */
        INSERTED,
        /** Old music has gone and new has come in its place. */
        REPLACED
    }

    /** A place where the edits differ; a cut has no length in the new track, an insertion none in the old. */
    public record Change(Kind kind, long oldStartUs, long oldEndUs, long newStartUs, long newEndUs) {
    }

    public EditMap {
        stretches = List.copyOf(stretches);
        changes = List.copyOf(changes);
    }

    /** Where a moment of the old track lies in the new one; empty if it was cut. */
    public OptionalLong newTime(long oldUs) {
        for (Stretch stretch : stretches) {
            if (oldUs >= stretch.oldStartUs && oldUs <= stretch.oldEndUs) {
                return OptionalLong.of(stretch.toNew(oldUs));
            }
        }
        return OptionalLong.empty();
    }

    /**
     * The tempo map of the new track: the old one's beats moved, bars that lost or won beats by an edit within them given
     * the beats they have now. Bars are counted anew from the first that is left.
     *
     * @param lastBar the last bar of the old map that matters
     * @return empty if fewer than two bars are left
     */
    public Optional<TempoMap> moved(TempoMap old, int lastBar) {
        List<Beat> beats = new ArrayList<>();
        int perBar = 0;
        for (int bar = 1; bar <= lastBar; bar++) {
            perBar = Math.max(perBar, old.meterOfBar(bar).beatsPerBar());
            for (int beat = 1; beat <= old.meterOfBar(bar).beatsPerBar(); beat++) {
                OptionalLong us = newTime(old.timeUsOfBar(bar, Rational.of(beat)));
                if (us.isPresent() && (beats.isEmpty() || us.getAsLong() > beats.get(beats.size() - 1).timeUs())) {
                    beats.add(new Beat(us.getAsLong(), beat, 1));
                }
            }
        }
        return TempoFit.fit(beats, perBar);
    }
}
