package org.girandole.physics.flight;

import java.util.List;

import org.girandole.physics.Figures;
import org.girandole.physics.PhysicsInputException;
import org.girandole.physics.Require;

/**
 * Wind measured or forecast at several heights. Between two heights its east and north parts run in a straight line;
 * below the lowest and above the highest they stay as they are there.
 *
 * @param layers at least one, in rising order of height
 */
public record LayeredWind(List<Layer> layers) implements Wind {

    /**
     * The wind at one height.
     *
     * @param heightM metres above ground
     * @param fromDeg where it comes from, degrees clockwise from north
     * @param speedMps its speed in m/s
     */
    public record Layer(double heightM, double fromDeg, double speedMps) {
        public Layer {
            Require.notNegative(heightM, "height of a wind layer", "m");
            Wind.require(fromDeg, speedMps);
        }
    }

    public LayeredWind {
        layers = List.copyOf(layers);
        if (layers.isEmpty()) {
            throw new PhysicsInputException("a wind without layers", "the wind at one height or more", "give a layer");
        }
        for (int i = 1; i < layers.size(); i++) {
            if (layers.get(i).heightM() <= layers.get(i - 1).heightM()) {
                throw new PhysicsInputException(
                        "a wind layer at " + Figures.of(layers.get(i).heightM()) + " m after one at "
                                + Figures.of(layers.get(i - 1).heightM()) + " m",
                        "layers in rising order of height", "put the layers in order");
            }
        }
    }

    @Override
    public double eastMps(double heightM) {
        return at(heightM, true);
    }

    @Override
    public double northMps(double heightM) {
        return at(heightM, false);
    }

    private double at(double heightM, boolean east) {
        int upper = 0;
        while (upper < layers.size() && layers.get(upper).heightM() < heightM) {
            upper++;
        }
        if (upper == 0 || upper == layers.size()) {
            return part(layers.get(Math.min(upper, layers.size() - 1)), east);
        }
        Layer below = layers.get(upper - 1);
        Layer above = layers.get(upper);
        double share = (heightM - below.heightM()) / (above.heightM() - below.heightM());
        return part(below, east) * (1 - share) + part(above, east) * share;
    }

    private static double part(Layer layer, boolean east) {
        return east ? Wind.east(layer.fromDeg(), layer.speedMps()) : Wind.north(layer.fromDeg(), layer.speedMps());
    }
}
