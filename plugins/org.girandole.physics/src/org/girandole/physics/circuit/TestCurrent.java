package org.girandole.physics.circuit;

import org.girandole.physics.Derivation;
import org.girandole.physics.Figures;
import org.girandole.physics.Require;

/** How much current a continuity test may drive. */
public final class TestCurrent {
    private static final double LIMIT_A = 0.05;
    private static final double NO_FIRE_SHARE = 0.2;
    private static final String SOURCE = "Washington WAC 212-17-317 (2005), measured into a short circuit";

    private TestCurrent() {
    }

    /**
     * The greatest test current: the smaller of 0.05 A and 20 % of the no-fire current.
     *
     * @param noFireA no-fire current of the igniter type in ampere
     * @return the limit in ampere as the last step
     */
    public static Derivation limitA(double noFireA) {
        Require.positive(noFireA, "no-fire current", "A");
        return Derivation.builder()
                .given("I_no-fire", noFireA, "A", "igniter")
                .step("I_test", "min(0.05 A, 20 % of I_no-fire)", "min(0.05, 0.2 * " + Figures.of(noFireA) + ")",
                        Math.min(LIMIT_A, NO_FIRE_SHARE * noFireA), "A", SOURCE)
                .build();
    }
}
