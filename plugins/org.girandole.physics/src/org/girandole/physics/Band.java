package org.girandole.physics;

/**
 * A value with the least and the most it may be.
 *
 * @param least the least value, at most {@code nominal}
 * @param nominal the value without tolerance
 * @param most the greatest value, at least {@code nominal}
 */
public record Band(double least, double nominal, double most) {
    public Band {
        if (!(least <= nominal && nominal <= most)) {
            throw new PhysicsInputException(
                    "the band runs " + Figures.of(least) + ", " + Figures.of(nominal) + ", " + Figures.of(most),
                    "least, nominal, most in rising order", "correct the tolerance");
        }
    }

    /** {@code nominal} plus and minus {@code tolerance}. */
    public static Band plusMinus(double nominal, double tolerance) {
        return new Band(nominal - tolerance, nominal, nominal + tolerance);
    }

    /** True from least to most, both ends included. */
    public boolean contains(double value) {
        return value >= least && value <= most;
    }
}
