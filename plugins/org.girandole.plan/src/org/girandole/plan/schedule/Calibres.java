package org.girandole.plan.schedule;

/** Calibres between metres and millimetres. */
public final class Calibres {
    private static final double PER_METRE = 1e6;

    private Calibres() {
    }

    /** Whole micrometres, so that 0.075 m is 75 mm and not a hair more or less. */
    public static double millimetres(double metres) {
        return Math.rint(metres * PER_METRE) / 1000;
    }
}
