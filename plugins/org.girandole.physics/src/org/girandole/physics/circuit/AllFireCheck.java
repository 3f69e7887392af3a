package org.girandole.physics.circuit;

import org.girandole.physics.Band;
import org.girandole.physics.Derivation;
import org.girandole.physics.Figures;
import org.girandole.physics.Require;

/**
 * Whether the current through an igniter is enough to fire it for certain. The least current within the tolerances is
 * held against all-fire current times margin.
 *
 * @param currentA current through the igniter
 * @param allFireA all-fire current of its type
 * @param margin how many times the all-fire current is wanted
 */
public record AllFireCheck(Band currentA, double allFireA, double margin) {
    /** The margin wanted where nothing else is said: common practice, no published source. */
    public static final double DEFAULT_MARGIN = 1.5;

    public AllFireCheck {
        Require.positive(allFireA, "all-fire current", "A");
        Require.between(margin, 1, 100, "all-fire margin", "");
    }

    /** The current wanted, in ampere. */
    public double neededA() {
        return allFireA * margin;
    }

    /** True if even the least current reaches what is wanted. */
    public boolean holds() {
        return currentA.least() >= neededA();
    }

    /** The current wanted, as a derivation. */
    public Derivation derivation() {
        return Derivation.builder()
                .given("I_all-fire", allFireA, "A", "igniter")
                .step("I_needed", "margin I_all-fire", Figures.of(margin) + " * " + Figures.of(allFireA), neededA(), "A",
                        margin == DEFAULT_MARGIN ? "common practice" : "chosen margin")
                .build();
    }
}
