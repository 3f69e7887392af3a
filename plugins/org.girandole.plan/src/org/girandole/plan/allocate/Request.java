package org.girandole.plan.allocate;

import java.util.Optional;
import org.girandole.plan.PlannedCue.Aim;
import org.girandole.plan.script.ScoreItem.PinRef;
import org.girandole.plan.script.ScoreItem.TubeRef;

/**
 * One igniter that needs a pin, and the pieces it lights that may need tubes.
 *
 * @param key of the cue, unique
 * @param slot of the controller; pins and tubes are used once in all slots, simultaneity counts within one
 * @param effect name of the effect or chain
 * @param calibreM calibre of the tube wanted, metres; empty when the catalogue does not say it
 * @param pieces tubes in a row, 1 for all but chains
 * @param pin written by hand: law
 * @param tube written by hand: law; of a chain, the first
 */
public record Request(String key, int slot, long fireUs, String position, String effect, boolean needsTube,
        Optional<Double> calibreM, int pieces, Aim aim, Optional<PinRef> pin, Optional<TubeRef> tube) {
    /** No two requests have one key, and tables of requests are asked for much. */
    @Override
    public int hashCode() {
        return key.hashCode();
    }
}
