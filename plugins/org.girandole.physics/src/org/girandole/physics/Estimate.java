package org.girandole.physics;

/**
 * A value that was not measured and not declared but estimated. Its type marks it: whatever shows the value must show
 * that it is an estimate, and a check that fails with either end of the range has failed.
 *
 * @param value the estimate itself
 * @param least the low end of what the sources give
 * @param most the high end of what the sources give
 * @param unit the unit of all three
 * @param source what the estimate rests on
 */
public record Estimate(double value, double least, double most, String unit, String source) {
    public Estimate {
        if (!(least <= value && value <= most)) {
            throw new PhysicsInputException(
                    "the estimate is " + Figures.of(value) + " outside " + Figures.of(least) + " to " + Figures.of(most),
                    "a value inside its range", "correct the estimate's range");
        }
    }

    /** The estimate as a step of a derivation. */
    public Derivation.Step step(String symbol) {
        return new Derivation.Step(symbol, "estimated (" + Figures.of(least) + " to " + Figures.of(most) + " " + unit + ")",
                "", value, unit, source);
    }
}
