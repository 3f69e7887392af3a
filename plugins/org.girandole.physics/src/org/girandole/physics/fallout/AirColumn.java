package org.girandole.physics.fallout;

import java.util.Arrays;
import java.util.function.DoubleUnaryOperator;

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
    /** Values of a layer in {@link #table}: density, wind east and wind north at its lower border, each with its growth to the upper one. */
    static final int FIELDS = 6;
    static final int DENSITY = 0;
    static final int DENSITY_GROWTH = 1;
    static final int EAST = 2;
    static final int EAST_GROWTH = 3;
    static final int NORTH = 4;
    static final int NORTH_GROWTH = 5;

    /**
     * Flights below this height meet the wind of this height. Near the ground the profile bends so sharply that it
     * would halve every step, while a shell is through it in a tenth of a second: the landing place moves by less than
     * a tenth of a metre. The drift of debris is summed with the true profile.
     */
    private static final double SHEAR_M = 3;
    private static final int LAYERS = (int) (TOP_M / LAYER_M);
    /** Just below the number of the top layer border, so that there is always a border above. */
    private static final double TOP_LAYER = LAYERS - 1e-9;

    final double[] table = new double[LAYERS * FIELDS];
    /** One over the speed of sound at each layer border, and metres of drift from there for a terminal speed of 1 m/s at sea level. */
    private final double[] perSound = new double[LAYERS + 1];
    private final double[] driftEast = new double[LAYERS + 1];
    private final double[] driftNorth = new double[LAYERS + 1];

    AirColumn(Air air, Wind wind) {
        for (int i = 0; i <= LAYERS; i++) {
            double height = i * LAYER_M;
            perSound[i] = 1 / air.soundMps(height);
            if (i > 0) {
                double middle = height - LAYER_M / 2;
                double seconds = LAYER_M / Math.sqrt(DebrisFall.SEA_LEVEL_KG_M3 / air.densityKgM3(middle));
                driftEast[i] = driftEast[i - 1] + wind.eastMps(middle) * seconds;
                driftNorth[i] = driftNorth[i - 1] + wind.northMps(middle) * seconds;
            }
        }
        fill(DENSITY, air::densityKgM3);
        fill(EAST, height -> wind.eastMps(Math.max(SHEAR_M, height)));
        fill(NORTH, height -> wind.northMps(Math.max(SHEAR_M, height)));
    }

    private void fill(int field, DoubleUnaryOperator atHeight) {
        double low = atHeight.applyAsDouble(0);
        for (int i = 0; i < LAYERS; i++) {
            double high = atHeight.applyAsDouble((i + 1) * LAYER_M);
            table[i * FIELDS + field] = low;
            table[i * FIELDS + field + 1] = high - low;
            low = high;
        }
    }

    /**
     * The number of the layer of a height and, behind the point, the share of the layer that lies below it; below ground as on the ground,
     * above the top as at the top.
     */
    static double layer(double heightM) {
        double layer = heightM * (1 / LAYER_M);
        return layer > 0 ? layer < TOP_LAYER ? layer : TOP_LAYER : 0;
    }

    /** One over the speed of sound in the layer of a height, s/m. */
    double perSound(double heightM) {
        return perSound[(int) layer(heightM)];
    }

    /** The lowest speed of sound at any height, m/s. */
    double leastSoundMps() {
        return 1 / Arrays.stream(perSound).max().orElseThrow();
    }

    /** Metres that the wind carries to the east what sinks from this height, for a terminal speed of 1 m/s at sea level. */
    double driftEastM(double heightM) {
        return between(driftEast, layer(heightM));
    }

    /** The same to the north. */
    double driftNorthM(double heightM) {
        return between(driftNorth, layer(heightM));
    }

    private static double between(double[] borders, double layer) {
        int below = (int) layer;
        return borders[below] + (layer - below) * (borders[below + 1] - borders[below]);
    }
}
