package org.girandole.plan.diff;

import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.girandole.plan.PlannedCue;
import org.girandole.plan.Timing;
import org.girandole.plan.script.Chain;
import org.girandole.plan.script.Effect;
import org.girandole.plan.script.ScoreItem;
import org.girandole.plan.script.SourceRef;
import org.girandole.timecode.Timecode;

/** A cue taken apart into its aspects, to be changed and put together again. */
final class CueDraft {
    private final Map<Aspect, Object> values = new EnumMap<>(Aspect.class);

    CueDraft(PlannedCue cue) {
        for (Aspect aspect : Aspect.values()) {
            values.put(aspect, aspect.of(cue));
        }
    }

    void set(Aspect aspect, Object value) {
        values.put(aspect, value);
    }

    PlannedCue cue() {
        return new PlannedCue(this.<String>get(Aspect.KEY), this.<Integer>get(Aspect.NUMBER), this.<String>get(Aspect.SOUNDTRACK),
                this.<Integer>get(Aspect.SLOT), this.<String>get(Aspect.SECTION), this.<Optional<String>>get(Aspect.NAME),
                this.<Integer>get(Aspect.SHOT), this.<Effect>get(Aspect.EFFECT), this.<Optional<Chain>>get(Aspect.CHAIN),
                this.<Optional<String>>get(Aspect.LOT), this.<String>get(Aspect.POSITION), this.<Timing>get(Aspect.TIMING),
                this.<Optional<Timecode>>get(Aspect.TIMECODE), this.<PlannedCue.Aim>get(Aspect.AIM),
                this.<Optional<PlannedCue.Pin>>get(Aspect.PIN), this.<Optional<PlannedCue.Tube>>get(Aspect.TUBE),
                this.<Optional<PlannedCue.Circuit>>get(Aspect.CIRCUIT), this.<Optional<PlannedCue.Burst>>get(Aspect.BURST),
                this.<List<PlannedCue.Item>>get(Aspect.ITEMS), this.<ScoreItem.Cue>get(Aspect.SCRIPT),
                this.<SourceRef>get(Aspect.SOURCE));
    }

    @SuppressWarnings("unchecked") // each aspect's value has the type of the record component it was read from
    private <T> T get(Aspect aspect) {
        return (T) values.get(aspect);
    }
}
