package org.girandole.plan.script;

import java.util.Optional;
import org.girandole.music.Meter;
import org.girandole.music.Rational;

/**
 * One line of a {@code tempo} block. The first entry has {@code atUs} (where bar 1 lies), later ones {@code bar}.
 *
 * @param bpm beats of the meter per minute
 * @param ramp when present, the tempo does not jump here: it ramps from the previous entry and reaches {@code bpm} at this bar
 */
public record TempoEntry(Optional<Long> atUs, Optional<Integer> bar, Rational bpm, Optional<Meter> meter, Optional<Ramp> ramp,
        SourceRef source) {
    /** How a ramp changes the tempo. */
    public enum Ramp {
        PER_BEAT, PER_SECOND
    }
}
