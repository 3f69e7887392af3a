package org.girandole.physics;

/** Checks of input numbers; each failure names the quantity, its value and its unit. */
public final class Require {
    private Require() {
    }

    /**
     * @return {@code value}
     * @throws PhysicsInputException if it is not a finite number above zero
     */
    public static double positive(double value, String what, String unit) {
        if (!(value > 0) || Double.isInfinite(value)) {
            throw wrong(value, what, unit, "a number above 0 " + unit);
        }
        return value;
    }

    /**
     * @return {@code value}
     * @throws PhysicsInputException if it is not a finite number of at least zero
     */
    public static double notNegative(double value, String what, String unit) {
        if (!(value >= 0) || Double.isInfinite(value)) {
            throw wrong(value, what, unit, "0 " + unit + " or more");
        }
        return value;
    }

    /**
     * @return {@code value}
     * @throws PhysicsInputException if it is not within {@code [least, most]}
     */
    public static double between(double value, double least, double most, String what, String unit) {
        if (!(value >= least && value <= most)) {
            throw wrong(value, what, unit, Figures.of(least) + " to " + Figures.of(most) + " " + unit);
        }
        return value;
    }

    /**
     * @return {@code value}
     * @throws PhysicsInputException if it is infinite or not a number
     */
    public static double finite(double value, String what, String unit) {
        if (!Double.isFinite(value)) {
            throw wrong(value, what, unit, "a finite number");
        }
        return value;
    }

    private static PhysicsInputException wrong(double value, String what, String unit, String expected) {
        return new PhysicsInputException("the " + what + " is " + Figures.of(value) + " " + unit, expected,
                "correct the " + what);
    }
}
