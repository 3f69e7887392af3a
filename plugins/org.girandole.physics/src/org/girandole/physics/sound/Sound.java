package org.girandole.physics.sound;

import org.girandole.physics.Derivation;
import org.girandole.physics.Figures;
import org.girandole.physics.Require;

/** Sound in dry, still air as an ideal gas: {@code c = sqrt(gamma R T)}, ISO 2533 constants. */
public final class Sound {
    /** Ratio of specific heats of air, ISO 2533. */
    public static final double GAMMA = 1.4;
    /** Specific gas constant of dry air in J/(kg K), ISO 2533. */
    public static final double GAS_CONSTANT = 287.05287;
    /** 0 degrees Celsius in kelvin. */
    public static final double ZERO_CELSIUS_K = 273.15;
    /** The coldest and the warmest air that is believed; outside it the figure is a slip of the pen. */
    private static final double COLDEST_C = -60;
    private static final double WARMEST_C = 60;

    private Sound() {
    }

    /**
     * @param airC air temperature in degrees Celsius, -60 to 60
     * @return the speed of sound in m/s
     */
    public static double speedMps(double airC) {
        Require.between(airC, COLDEST_C, WARMEST_C, "air temperature", "degC");
        return Math.sqrt(GAMMA * GAS_CONSTANT * (airC + ZERO_CELSIUS_K));
    }

    /**
     * How much later a sound is heard than its source is seen. Light is taken as immediate; wind is left out.
     *
     * @param slantM straight distance from source to ear in metres
     * @param airC air temperature in degrees Celsius
     */
    public static SoundDelay delay(double slantM, double airC) {
        Require.notNegative(slantM, "distance from burst to listener", "m");
        double speed = speedMps(airC);
        double seconds = slantM / speed;
        long delayUs = Math.round(seconds * 1e6);
        Derivation derivation = Derivation.builder()
                .given("t", airC, "degC", "air temperature")
                .step("c", "sqrt(gamma R (t + 273.15))",
                        "sqrt(1.4 * 287.05287 * " + Figures.of(airC + ZERO_CELSIUS_K) + ")", speed, "m/s",
                        "ideal gas, constants of ISO 2533")
                .given("d", slantM, "m", "distance from burst to listener")
                .step("delay", "d / c", Figures.of(slantM) + " / " + Figures.of(speed), seconds, "s", "")
                .build();
        return new SoundDelay(delayUs, speed, derivation);
    }
}
