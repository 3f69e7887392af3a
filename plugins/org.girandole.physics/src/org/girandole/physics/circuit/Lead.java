package org.girandole.physics.circuit;

import org.girandole.physics.Band;
import org.girandole.physics.Derivation;
import org.girandole.physics.Figures;
import org.girandole.physics.Require;

/**
 * The two-wire lead from a pin to its igniters.
 *
 * @param conductor one of its two wires
 * @param runM length of the run in metres, one way; the current goes there and back
 * @param copperC temperature of the copper in degrees Celsius
 * @param tolerance share by which the resistance may be off either way, 0 if it is taken as exact
 */
public record Lead(Conductor conductor, double runM, double copperC, double tolerance) {
    /** Temperature coefficient of the resistance of annealed copper at 20 degrees Celsius, per kelvin, IEC 60028. */
    public static final double COPPER_PER_K = 0.00393;
    private static final double REFERENCE_C = 20;

    public Lead {
        Require.notNegative(runM, "length of the lead", "m");
        Require.between(copperC, -60, 120, "temperature of the lead", "degC");
        Require.between(tolerance, 0, 0.99, "tolerance of the lead (as a share of 1)", "");
    }

    /** A lead whose resistance is taken as exact. */
    public Lead(Conductor conductor, double runM, double copperC) {
        this(conductor, runM, copperC, 0);
    }

    /** What the copper's temperature does to its resistance: 1 at 20 degrees Celsius. */
    public static double temperatureFactor(double copperC) {
        return 1 + COPPER_PER_K * (copperC - REFERENCE_C);
    }

    /** Resistance there and back in ohm. */
    public Band loopOhm() {
        double nominal = 2 * runM / 1000 * conductor.ohmPerKm() * temperatureFactor(copperC);
        return Band.plusMinus(nominal, nominal * tolerance);
    }

    /** How {@link #loopOhm()} comes about; its last step is the nominal resistance there and back. */
    public Derivation derivation() {
        double factor = temperatureFactor(copperC);
        return Derivation.builder()
                .all(conductor.derivation())
                .given("L", runM, "m", "length of the lead, one way")
                .step("k", "1 + 0.00393 (t - 20)", "1 + 0.00393 * (" + Figures.of(copperC) + " - 20)", factor, "",
                        "annealed copper, IEC 60028")
                .step("R_lead", "2 L r20 k / 1000",
                        "2 * " + Figures.of(runM) + " * " + Figures.of(conductor.ohmPerKm()) + " * " + Figures.of(factor)
                                + " / 1000",
                        loopOhm().nominal(), "ohm", "")
                .build();
    }
}
