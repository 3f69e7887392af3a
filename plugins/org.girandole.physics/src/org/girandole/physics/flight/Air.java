package org.girandole.physics.flight;

/** The air a shell flies through, by height above the site's ground. */
public sealed interface Air permits StandardAir, UniformAir {

    /** Density in kg/m3 at {@code heightM} metres above the site. */
    double densityKgM3(double heightM);

    /** Speed of sound in m/s at {@code heightM} metres above the site. */
    double soundMps(double heightM);
}
