package org.girandole.plan.diff;

import java.util.Collections;
import java.util.EnumMap;
import java.util.Map;
import java.util.Optional;
import org.girandole.plan.PlannedCue;

/** What happened to one cue. */
public sealed interface CueChange {

    /** The cue as it is afterwards, or was before if it is gone. */
    PlannedCue cue();

    /** A cue that was not there. */
    record Added(PlannedCue cue) implements CueChange {
    }

    /** A cue that is no more. */
    record Removed(PlannedCue cue) implements CueChange {
    }

    /**
     * A cue that changed.
     *
     * @param values new value of each aspect that differs in any way, places in the script included
     * @param movement how its firing moved and why; empty when it fires at the same moment
     */
    record Changed(PlannedCue before, PlannedCue cue, Map<Aspect, Object> values, Optional<Movement> movement) implements CueChange {
        public Changed {
            values = Collections.unmodifiableMap(new EnumMap<>(values));
        }

        /** Whether the aspect changed in more than its place in the script. */
        public boolean really(Aspect aspect) {
            return values.containsKey(aspect) && !Bare.equal(aspect.of(before), aspect.of(cue));
        }
    }
}
