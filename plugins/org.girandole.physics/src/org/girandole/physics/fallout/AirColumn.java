package org.girandole.physics.fallout;

import org.girandole.physics.flight.Air;
import org.girandole.physics.flight.DebrisFall;
import org.girandole.physics.flight.Wind;

/**
 * Air and wind over the site in layers, for fast reading: straight lines between layers of 2 m. Also how far something
 * drifts that sinks from a height to the ground. Immutable, shared by all threads.
 */
final class AirColumn {
    static final double TOP_M = 3000;
    static final double LAYER_M = 2;
    /** Values for each layer border: density, one over the speed of sound, wind east, wind north, drift east, drift north. */
    static final int FIELDS = 6;
    static final int DENSITY = 0;
    static final int PER_SOUND = 1;
    static final int EAST = 2;
    static final int NORTH = 3;
    static final int DRIFT_EAST = 4;
    static final int DRIFT_NORTH = 5;

    /**
     * Flights below this height meet the wind of this height. Near the ground the profile bends so sharply that it
     * would halve every step, while a shell is through it in a tenth of a second: the landing place moves by less than
     * a tenth of a metre. The drift of debris is summed with the true profile.
     */
    private static final double SHEAR_M = 3;
    private static final int LAYERS = (int) (TOP_M / LAYER_M);
    /** Just below the number of the top layer border, so that there is always a border above. */
    static final double TOP_LAYER = LAYERS - 1e-9;

    final double[] table = new double[(LAYERS + 1) * FIELDS];

    AirColumn(Air air, Wind wind) {
        for (int i = 0; i <= LAYERS; i++) {
            double height = i * LAYER_M;
            int at = i * FIELDS;
            table[at + DENSITY] = air.densityKgM3(height);
            table[at + PER_SOUND] = 1 / air.soundMps(height);
            table[at + EAST] = wind.eastMps(Math.max(SHEAR_M, height));
            table[at + NORTH] = wind.northMps(Math.max(SHEAR_M, height));
            if (i > 0) {
                double middle = height - LAYER_M / 2;
                // Metres of drift for a terminal speed of 1 m/s at sea level.
                double seconds = LAYER_M / Math.sqrt(DebrisFall.SEA_LEVEL_KG_M3 / air.densityKgM3(middle));
                table[at + DRIFT_EAST] = table[at - FIELDS + DRIFT_EAST] + wind.eastMps(middle) * seconds;
                table[at + DRIFT_NORTH] = table[at - FIELDS + DRIFT_NORTH] + wind.northMps(middle) * seconds;
            }
        }
    }

    /** A field at a height; below ground as on the ground, above the top as at the top. */
    double at(int field, double heightM) {
        double layer = Math.max(0, Math.min(heightM * (1 / LAYER_M), TOP_LAYER));
        int below = (int) layer;
        double share = layer - below;
        double low = table[below * FIELDS + field];
        return low + share * (table[(below + 1) * FIELDS + field] - low);
    }
}
