package org.girandole.physics.flight;

import org.girandole.physics.Derivation;
import org.girandole.physics.Figures;
import org.girandole.physics.Require;
import org.girandole.physics.geometry.Point2;
import org.girandole.physics.geometry.Point3;

/**
 * Debris that sinks from a burst at terminal speed and drifts with the air:
 * {@code drift = integral of w(z) / Vt(z) dz}, {@code Vt(z) = Vt0 sqrt(rho0 / rho(z))}.
 *
 * @param place where it lands
 * @param fallUs how long it falls, in microseconds
 * @param derivation how it was computed; the last step is the drift in metres
 */
public record DebrisFall(Point2 place, long fallUs, Derivation derivation) {
    /** Air density that terminal speeds are stated for: sea level, ISO 2533. */
    public static final double SEA_LEVEL_KG_M3 = 1.225;
    private static final int LAYERS = 1000;

    /**
     * @param from where the debris is set free at rest in the air
     * @param terminalMps its terminal speed at sea level, in m/s
     */
    public static DebrisFall from(Point3 from, double terminalMps, Air air, Wind wind) {
        Require.notNegative(from.z(), "height of the burst", "m");
        Require.positive(terminalMps, "terminal speed of debris", "m/s");
        double step = from.z() / LAYERS;
        double seconds = 0;
        double east = 0;
        double north = 0;
        for (int i = 0; i < LAYERS; i++) {
            double height = (i + 0.5) * step;
            double sinks = terminalMps * Math.sqrt(SEA_LEVEL_KG_M3 / air.densityKgM3(height));
            double lasts = step / sinks;
            seconds += lasts;
            east += wind.eastMps(height) * lasts;
            north += wind.northMps(height) * lasts;
        }
        Point2 place = new Point2(from.x() + east, from.y() + north);
        double drift = StrictMath.hypot(east, north);
        Derivation derivation = Derivation.builder()
                .given("h", from.z(), "m", "height of the burst")
                .given("Vt0", terminalMps, "m/s", "terminal speed of the debris at sea level")
                .step("t_fall", "sum of dz / Vt(z)", "", seconds, "s", "terminal speed by air density")
                .step("drift", "sum of w(z) dz / Vt(z)", "mean wind " + Figures.of(seconds == 0 ? 0 : drift / seconds)
                        + " m/s over " + Figures.of(seconds) + " s", drift, "m", "")
                .build();
        return new DebrisFall(place, Math.round(seconds * 1e6), derivation);
    }
}
