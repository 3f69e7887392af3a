package org.girandole.plan.rehearse;

import java.util.List;
import java.util.Optional;
import java.util.OptionalLong;
import java.util.stream.Stream;
import org.girandole.plan.rehearse.CueOutcome.End;

/**
 * What happened.
 *
 * @param cues one for each cue of the night, in the order in which they were due
 * @param states what the controller that fires said, from the beginning of the night
 * @param errors how far its reckoning was ahead of the code, at the moments where that changes its course
 */
public record RehearsalLog(List<CueOutcome> cues, List<StateChange> states, List<ErrorPoint> errors) {
    public RehearsalLog {
        cues = List.copyOf(cues);
        states = List.copyOf(states);
        errors = List.copyOf(errors);
    }

    /** The reckoning's error at a moment; in between it runs straight, but for ageing. */
    public record ErrorPoint(long atUs, long errorUs) {
    }

    public Stream<CueOutcome> ended(End end) {
        return cues.stream().filter(cue -> cue.end() == end);
    }

    /** The cue that was fired farthest from its moment in the music, the first of equals. */
    public Optional<CueOutcome> worst() {
        CueOutcome worst = null;
        for (CueOutcome cue : cues) {
            if (cue.lateUs().isPresent() && (worst == null || size(cue.lateUs()) > size(worst.lateUs()))) {
                worst = cue;
            }
        }
        return Optional.ofNullable(worst);
    }

    private static long size(OptionalLong us) {
        return Math.abs(us.getAsLong());
    }
}
