package org.girandole.physics.circuit;

import java.util.List;
import org.girandole.physics.Derivation;

/**
 * One pin fired alone.
 *
 * @param source the supply
 * @param branch what hangs on the pin
 */
public record PinLoop(Source source, Branch branch) {

    /** Resistance, current and expected reading of the pin. */
    public LoopResult solve() {
        return alone().solve().get(0);
    }

    /** How that comes about; the last step is the smallest current through an igniter. */
    public Derivation derivation() {
        return alone().derivation(0);
    }

    private SharedSource alone() {
        return new SharedSource(source, List.of(branch));
    }
}
