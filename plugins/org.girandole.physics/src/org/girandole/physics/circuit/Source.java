package org.girandole.physics.circuit;

import org.girandole.physics.Require;

/**
 * A supply that keeps its voltage: an electromotive force behind a resistance.
 *
 * @param emfV voltage without load
 * @param ohm inner resistance that all pins fired at once share
 */
public record Source(double emfV, double ohm) {
    public Source {
        Require.positive(emfV, "voltage of the supply", "V");
        Require.notNegative(ohm, "resistance of the supply", "ohm");
    }
}
