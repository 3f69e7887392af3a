package org.girandole.plan.script;

import java.util.List;

/** A distance in time between cues, as written: {@code 1/2 beat}, {@code 1 bar}, {@code 250 ms}; the sum of its steps. */
public record Duration(List<TimeExpr.Step> steps, SourceRef source) {
    public Duration {
        steps = List.copyOf(steps);
    }
}
