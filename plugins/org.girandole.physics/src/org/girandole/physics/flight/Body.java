package org.girandole.physics.flight;

import org.girandole.physics.Require;

/**
 * What flies: a shell or comet, as a point with mass and cross-section.
 *
 * @param massKg mass in kilograms, without lift charge
 * @param diameterM diameter in metres
 * @param drag drag coefficient by Mach number
 */
public record Body(double massKg, double diameterM, DragCurve drag) {
    public Body {
        Require.positive(massKg, "mass of the shell", "kg");
        Require.positive(diameterM, "diameter of the shell", "m");
    }

    /** A sphere with the drag of {@link DragCurve#SPHERE}. */
    public static Body sphere(double massKg, double diameterM) {
        return new Body(massKg, diameterM, DragCurve.SPHERE);
    }

    /** A sphere whose mass and diameter are estimated from its calibre; mark it so wherever it shows. */
    public static Body estimated(double calibreMm) {
        return sphere(Estimates.massKg(calibreMm).value(), Estimates.shellDiameterMm(calibreMm).value() / 1000);
    }

    /** Cross-section in square metres. */
    public double areaM2() {
        return Math.PI * diameterM * diameterM / 4;
    }

    /** The speed at which drag holds the weight, in m/s, in air of this density and at low Mach number. */
    public double terminalMps(double densityKgM3) {
        return Math.sqrt(2 * massKg * FlightModel.STANDARD_GRAVITY / (densityKgM3 * drag.cd(0) * areaM2()));
    }
}
