package org.girandole.plan.schedule;

import java.util.Optional;
import org.girandole.physics.Estimate;
import org.girandole.physics.PhysicsInputException;
import org.girandole.physics.flight.Estimates;
import org.girandole.plan.Timing.RiseSource;
import org.girandole.plan.script.Effect;
import org.girandole.plan.script.EffectKind;
import org.girandole.plan.script.Lot;
import org.girandole.plan.script.Measured;

/**
 * Firing to burst of one effect from one lot, microseconds.
 *
 * @param estimate what the value rests on when it is an estimate
 */
record Rise(long us, long plusMinusUs, RiseSource source, Optional<Estimate> estimate) {
    private static final Rise NONE = new Rise(0, 0, RiseSource.NONE, Optional.empty());

    /**
     * What was measured on the lot, else what the catalogue says, else an estimate from the calibre for shells; nothing for what is seen
     * as it is fired.
     *
     * @throws Unresolved for what rises, when there is nothing to go by
     */
    static Rise of(Effect effect, Optional<Lot> lot) throws Unresolved {
        Optional<Measured> measured = lot.flatMap(Lot::rise);
        if (measured.isPresent()) {
            return of(measured.get(), RiseSource.LOT);
        }
        if (effect.rise().isPresent()) {
            return of(effect.rise().get(), RiseSource.CATALOGUE);
        }
        return effect.kind().rises() ? estimated(effect) : NONE;
    }

    private static Rise of(Measured rise, RiseSource source) {
        return new Rise(rise.valueUs(), rise.plusMinusUs(), source, Optional.empty());
    }

    private static Rise estimated(Effect effect) throws Unresolved {
        if (effect.kind() == EffectKind.ROCKET || effect.calibreM().isEmpty()) {
            throw missing(effect, "neither a rise nor a calibre to estimate one from");
        }
        try {
            Estimate estimate = Estimates.riseUs(Calibres.millimetres(effect.calibreM().get()));
            double farther = Math.max(estimate.value() - estimate.least(), estimate.most() - estimate.value());
            return new Rise(Math.round(estimate.value()), Math.round(farther), RiseSource.ESTIMATED, Optional.of(estimate));
        } catch (PhysicsInputException e) {
            throw missing(effect, e.getMessage());
        }
    }

    private static Unresolved missing(Effect effect, String why) {
        return new Unresolved(Troubles.RISE_MISSING, "The rise of " + effect.name() + " is not known: "
                + why, "no rise", "a rise", "give the " + effect.kind().word() + " a rise, as measured or as its maker says",
                effect.source());
    }
}
