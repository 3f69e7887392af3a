package org.girandole.physics.flight;

import org.girandole.physics.Require;

/**
 * Air that is the same at every height; for checks against closed forms.
 *
 * @param densityKgM3 density in kg/m3
 * @param soundMps speed of sound in m/s
 */
public record UniformAir(double densityKgM3, double soundMps) implements Air {
    public UniformAir {
        Require.notNegative(densityKgM3, "density of the air", "kg/m3");
        Require.positive(soundMps, "speed of sound", "m/s");
    }

    @Override
    public double densityKgM3(double heightM) {
        return densityKgM3;
    }

    @Override
    public double soundMps(double heightM) {
        return soundMps;
    }
}
