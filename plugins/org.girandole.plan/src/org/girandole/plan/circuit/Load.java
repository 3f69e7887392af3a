package org.girandole.plan.circuit;

import java.util.Optional;
import org.girandole.plan.PlannedCue;
import org.girandole.plan.PlannedCue.Pin;

/**
 * One igniter on a pin.
 *
 * @param rack the rack it hangs at, if it has one
 * @param igniter name of the igniter type
 */
public record Load(String key, int slot, long fireUs, Pin pin, String position, Optional<String> rack, Optional<String> igniter) {
    /** The load that a planned cue is; empty when it has no pin. */
    public static Optional<Load> of(PlannedCue cue) {
        return cue.pin().map(pin -> new Load(cue.key(), cue.slot(), cue.timing().fireUs(), pin, cue.position(),
                cue.tube().map(PlannedCue.Tube::rack), cue.effect().igniter()));
    }
}
