package org.girandole.physics.separation;

import java.util.Optional;

import org.girandole.physics.Figures;

/** What a table may ask about a firing. Values are kept in the unit named here and shown in the unit of {@link #show}. */
public enum Quantity {
    /** Inside diameter of the tube, metres. */
    CALIBRE("calibre", "mm", 1000, null),
    /** Greatest height of burst or effect above the place of firing, metres. */
    HEIGHT("burst height", "m", 1, null),
    /** Range of debris thrown sideways, metres; unknown for most articles. */
    DEBRIS_RANGE("range of thrown debris", "m", 1, null),
    /** Height of the structure the tubes stand on, metres. */
    STRUCTURE("height of the structure", "m", 1, 0.0),
    /** Slope of the ground, metres of rise in a hundred. */
    SLOPE("slope of the ground", "%", 1, 0.0),
    /** Tilt of the tube from the vertical, degrees. */
    TILT("tilt", "deg", 1, 0.0),
    /** Speed of the wind, m/s. */
    WIND("wind", "m/s", 1, 0.0);

    private final String word;
    private final String unit;
    private final double scale;
    private final Double assumed;

    Quantity(String word, String unit, double scale, Double assumed) {
        this.word = word;
        this.unit = unit;
        this.scale = scale;
        this.assumed = assumed;
    }

    /** The word for it in messages. */
    public String word() {
        return word;
    }

    /** The unit it is shown in. */
    public String unit() {
        return unit;
    }

    /** {@code value} in the unit it is shown in. */
    public double shown(double value) {
        return value * scale;
    }

    /** {@code value} with its unit, as messages show it. */
    public String show(double value) {
        return Figures.of(shown(value)) + " " + unit;
    }

    /** What is assumed when nothing is said, and then named as an assumption; empty if nothing may be assumed. */
    public Optional<Double> assumed() {
        return Optional.ofNullable(assumed);
    }
}
