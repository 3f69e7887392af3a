package org.girandole.physics.flight;

import org.girandole.physics.Require;
import org.girandole.physics.sound.Sound;

/**
 * The international standard atmosphere (ISO 2533) over a site, shifted to the night's air temperature: pressure at the
 * site is that of the standard at its elevation; above the site the temperature falls by 6.5 K/km from the air
 * temperature given, and pressure follows in hydrostatic balance.
 */
public final class StandardAir implements Air {
    private static final double SEA_LEVEL_K = 288.15;
    private static final double SEA_LEVEL_PA = 101325;
    private static final double LAPSE_K_PER_M = 0.0065;
    private static final double EXPONENT = FlightModel.STANDARD_GRAVITY / (Sound.GAS_CONSTANT * LAPSE_K_PER_M);
    private static final double TOP_M = 11000;

    private final double sitePa;
    private final double siteK;

    /**
     * @param elevationM elevation of the site above sea level, -500 to 6000 m
     * @param airC air temperature at the site in degrees Celsius, -60 to 60
     */
    public StandardAir(double elevationM, double airC) {
        Require.between(elevationM, -500, 6000, "elevation of the site", "m");
        Require.between(airC, -60, 60, "air temperature", "degC");
        sitePa = standardPa(elevationM);
        siteK = airC + Sound.ZERO_CELSIUS_K;
    }

    /** The air of the standard itself, 15 degrees Celsius at sea level, over a site at {@code elevationM}. */
    public static StandardAir undisturbed(double elevationM) {
        return new StandardAir(elevationM, standardK(elevationM) - Sound.ZERO_CELSIUS_K);
    }

    private static double standardK(double elevationM) {
        return SEA_LEVEL_K - LAPSE_K_PER_M * elevationM;
    }

    private static double standardPa(double elevationM) {
        return SEA_LEVEL_PA * StrictMath.pow(standardK(elevationM) / SEA_LEVEL_K, EXPONENT);
    }

    /** Temperature in kelvin at {@code heightM} metres above the site. */
    public double kelvin(double heightM) {
        return siteK - LAPSE_K_PER_M * Math.min(heightM, TOP_M);
    }

    /** Pressure in pascal at {@code heightM} metres above the site. */
    public double pascal(double heightM) {
        return sitePa * StrictMath.pow(kelvin(heightM) / siteK, EXPONENT);
    }

    @Override
    public double densityKgM3(double heightM) {
        return pascal(heightM) / (Sound.GAS_CONSTANT * kelvin(heightM));
    }

    @Override
    public double soundMps(double heightM) {
        return Math.sqrt(Sound.GAMMA * Sound.GAS_CONSTANT * kelvin(heightM));
    }
}
