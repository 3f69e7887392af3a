package org.girandole.physics.circuit;

import java.util.List;
import java.util.Optional;

/** The maximum conductor resistances of IEC 60228 for the sizes that firing leads have. */
final class Iec60228 {
    /**
     * Ohm per kilometre at 20 degrees Celsius, as printed by several agreeing cable makers' tables; the standard gives
     * three significant figures.
     */
    private static final List<Row> ROWS = List.of(
            new Row(0.5, 36.0, 36.7, 39.0, 40.1),
            new Row(0.75, 24.5, 24.8, 26.0, 26.7),
            new Row(1.0, 18.1, 18.2, 19.5, 20.0),
            new Row(1.5, 12.1, 12.2, 13.3, 13.7),
            new Row(2.5, 7.41, 7.56, 7.98, 8.21));

    private record Row(double areaMm2, double plain, double coated, double flexiblePlain, double flexibleCoated) {
    }

    private Iec60228() {
    }

    static Optional<Double> maximumOhmPerKm(double areaMm2, Strands strands, boolean coated) {
        return ROWS.stream().filter(row -> row.areaMm2 == areaMm2).findFirst().map(row -> switch (strands) {
            case SOLID, STRANDED -> coated ? row.coated : row.plain;
            case FLEXIBLE -> coated ? row.flexibleCoated : row.flexiblePlain;
        });
    }
}
