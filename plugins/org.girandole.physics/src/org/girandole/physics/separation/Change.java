package org.girandole.physics.separation;

/** What a modifier does. */
public sealed interface Change {

    /** Adds this quantity to the height before the base distance is computed. */
    record AddToHeight(Quantity quantity) implements Change {
    }

    /** Multiplies the distance. */
    record MultiplyBy(double factor) implements Change {
    }

    /** Where a quantity is greater than the distance, the distance becomes this multiple of it. */
    record IfBeyond(Quantity quantity, double factor) implements Change {
    }

    /**
     * The document allows a reduction. It is not applied; the reduced distance is stated beside the full one, because
     * to use it is a decision.
     *
     * @param share greatest share that may be taken off, 0.4 for 40 %
     */
    record MayReduceBy(double share) implements Change {
    }

    /** The document gives no number here. */
    record NoNumber(String reason) implements Change {
    }

    /** More by so many percent. */
    static Change addPercent(double percent) {
        return new MultiplyBy(1 + percent / 100);
    }
}
