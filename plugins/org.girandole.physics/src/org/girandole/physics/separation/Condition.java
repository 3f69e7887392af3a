package org.girandole.physics.separation;

import java.util.Arrays;
import java.util.Collections;
import java.util.EnumSet;
import java.util.Set;
import java.util.TreeSet;

/** When a rule or a modifier holds. Several conditions of one rule must all hold. */
public sealed interface Condition {

    /** The article is one of these. */
    record IsA(Set<ArticleKind> kinds) implements Condition {
        public IsA {
            // A sorted copy, so that messages list the kinds in one order.
            kinds = Collections.unmodifiableSet(new TreeSet<>(kinds));
        }
    }

    /** The fact is stated. */
    record Has(Flag flag) implements Condition {
    }

    /** The direction is this one. */
    record Facing(Where where) implements Condition {
    }

    /**
     * A quantity lies in a range.
     *
     * @param from lower end
     * @param fromIncluded whether the lower end belongs to the range
     * @param to upper end, infinity if open
     * @param toIncluded whether the upper end belongs to the range
     */
    record In(Quantity quantity, double from, boolean fromIncluded, double to, boolean toIncluded) implements Condition {
        /** Whether {@code value} lies in the range; a billionth off an end counts as the end. */
        public boolean holds(double value) {
            double low = slack(from);
            double high = slack(to);
            return (fromIncluded ? value >= from - low : value > from + low)
                    && (toIncluded ? value <= to + high : value < to - high);
        }

        private static double slack(double end) {
            return Double.isInfinite(end) ? 0 : 1e-9 * Math.max(1, Math.abs(end));
        }
    }

    static Condition isA(ArticleKind first, ArticleKind... more) {
        EnumSet<ArticleKind> kinds = EnumSet.of(first);
        kinds.addAll(Arrays.asList(more));
        return new IsA(kinds);
    }

    static Condition has(Flag flag) {
        return new Has(flag);
    }

    static Condition facing(Where where) {
        return new Facing(where);
    }

    /** {@code quantity >= from}. */
    static Condition atLeast(Quantity quantity, double from) {
        return new In(quantity, from, true, Double.POSITIVE_INFINITY, false);
    }

    /** {@code quantity > from}. */
    static Condition above(Quantity quantity, double from) {
        return new In(quantity, from, false, Double.POSITIVE_INFINITY, false);
    }

    /** {@code quantity <= to}. */
    static Condition atMost(Quantity quantity, double to) {
        return new In(quantity, Double.NEGATIVE_INFINITY, true, to, true);
    }

    /** {@code quantity < to}. */
    static Condition below(Quantity quantity, double to) {
        return new In(quantity, Double.NEGATIVE_INFINITY, true, to, false);
    }

    /** {@code from < quantity <= to}. */
    static Condition aboveUpTo(Quantity quantity, double from, double to) {
        return new In(quantity, from, false, to, true);
    }

    /** {@code from <= quantity <= to}. */
    static Condition between(Quantity quantity, double from, double to) {
        return new In(quantity, from, true, to, true);
    }
}
