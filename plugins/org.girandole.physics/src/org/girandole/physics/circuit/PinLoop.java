package org.girandole.physics.circuit;

import java.util.List;

/**
 * One pin fired alone.
 *
 * @param source the supply
 * @param branch what hangs on the pin
 */
public record PinLoop(Source source, Branch branch) {

    /** Resistance, current and expected reading of the pin. */
    public LoopResult solve() {
        return new SharedSource(source, List.of(branch)).solve().get(0);
    }
}
