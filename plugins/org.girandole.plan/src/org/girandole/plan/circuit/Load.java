package org.girandole.plan.circuit;

import java.util.Optional;
import org.girandole.plan.PlannedCue.Pin;

/**
 * One igniter on a pin.
 *
 * @param rack the rack it hangs at, if it has one
 * @param igniter name of the igniter type
 */
public record Load(String key, int slot, long fireUs, Pin pin, String position, Optional<String> rack, Optional<String> igniter) {
}
