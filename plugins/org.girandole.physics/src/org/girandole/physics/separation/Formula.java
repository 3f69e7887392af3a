package org.girandole.physics.separation;

import java.util.List;

/** How a base distance in metres is found. */
public sealed interface Formula {

    /** Always the same. */
    record Fixed(double metres) implements Formula {
    }

    /**
     * A multiple of a quantity.
     *
     * @param factor metres of distance for each unit of the quantity
     * @param words the factor as the document writes it, such as {@code 70 ft per inch}
     */
    record Times(double factor, Quantity quantity, String words) implements Formula {
    }

    /** The greatest of several. */
    record Greatest(List<Formula> parts) implements Formula {
        public Greatest {
            parts = List.copyOf(parts);
        }
    }

    /** The sum of several. */
    record Sum(List<Formula> parts) implements Formula {
        public Sum {
            parts = List.copyOf(parts);
        }
    }

    /**
     * A table by a quantity: the first row whose limit is not passed. Beyond the last row there is no number.
     *
     * @param rows rows in rising order
     */
    record Steps(Quantity quantity, List<Row> rows) implements Formula {
        public Steps {
            rows = List.copyOf(rows);
        }
    }

    /**
     * A row of {@link Steps}.
     *
     * @param upTo greatest value of the quantity, included
     * @param metres the distance
     */
    record Row(double upTo, double metres) {
    }

    /** The document gives no number. */
    record NoNumber(String reason) implements Formula {
    }

    static Formula fixed(double metres) {
        return new Fixed(metres);
    }

    static Formula times(double factor, Quantity quantity, String words) {
        return new Times(factor, quantity, words);
    }

    static Formula greatest(Formula... parts) {
        return new Greatest(List.of(parts));
    }

    static Formula sum(Formula... parts) {
        return new Sum(List.of(parts));
    }

    static Formula steps(Quantity quantity, Row... rows) {
        return new Steps(quantity, List.of(rows));
    }

    static Formula noNumber(String reason) {
        return new NoNumber(reason);
    }
}
