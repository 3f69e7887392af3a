package org.girandole.plan.rehearse;

import java.util.Optional;
import org.girandole.plan.Plan;
import org.girandole.plan.script.Rehearsal;

/**
 * A rehearsal of a script, gone through once.
 *
 * @param night what comes of it; empty when it cannot be gone through
 * @param impossible why it cannot be gone through
 */
public record GoneThrough(Rehearsal rehearsal, Optional<Rehearsed> night, Optional<ImpossibleNight> impossible) {
    public static GoneThrough of(Plan plan, Rehearsal rehearsal) {
        try {
            return new GoneThrough(rehearsal, Optional.of(Rehearsals.of(plan, rehearsal)), Optional.empty());
        } catch (ImpossibleNight e) {
            return new GoneThrough(rehearsal, Optional.empty(), Optional.of(e));
        }
    }
}
