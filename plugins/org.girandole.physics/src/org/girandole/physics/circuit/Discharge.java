package org.girandole.physics.circuit;

import java.util.List;

import org.girandole.physics.Band;
import org.girandole.physics.Derivation;

/**
 * What a capacitor does to the igniters of one pin.
 *
 * @param start the circuit at the first moment; its currents are the peaks
 * @param energyJ energy in the capacitor before, in joule
 * @param tauMs time constant of the decay in milliseconds, with nominal resistances
 * @param impulseMjPerOhm integral of i^2 dt through each igniter until the capacitor is empty, in mJ/ohm
 * @param derivation how the nominal values come about; the last step is the smallest impulse
 */
public record Discharge(LoopResult start, double energyJ, double tauMs, List<Band> impulseMjPerOhm,
        Derivation derivation) {
    public Discharge {
        impulseMjPerOhm = List.copyOf(impulseMjPerOhm);
    }

    /** How long the nominal current of the weakest igniter stays at or above {@code currentA}, in milliseconds. */
    public double aboveMs(double currentA) {
        double peak = start.igniterA().stream().mapToDouble(Band::nominal).min().orElseThrow();
        return peak <= currentA ? 0 : tauMs * Math.log(peak / currentA);
    }
}
