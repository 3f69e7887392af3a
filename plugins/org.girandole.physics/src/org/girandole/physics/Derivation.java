package org.girandole.physics;

import java.util.ArrayList;
import java.util.List;
import java.util.Objects;

/**
 * How a result came about, step by step, in the order of computation. The last step is the result. Immutable.
 *
 * @param steps the steps, never empty
 */
public record Derivation(List<Step> steps) {

    public Derivation {
        steps = List.copyOf(steps);
        if (steps.isEmpty()) {
            throw new IllegalArgumentException("a derivation needs at least one step");
        }
    }

    /**
     * One line of a derivation.
     *
     * @param symbol the name of the value, as the formula of a later step uses it
     * @param formula the formula by symbols, or a word such as "given" or "table"
     * @param substituted the formula with numbers and units in it; may be empty for a given value
     * @param value the value, in {@code unit}
     * @param unit the unit, empty for a plain number
     * @param source the document or table the formula or number is from; empty for plain arithmetic
     */
    public record Step(String symbol, String formula, String substituted, double value, String unit, String source) {
        public Step {
            Objects.requireNonNull(symbol, "symbol");
            Objects.requireNonNull(formula, "formula");
            Objects.requireNonNull(substituted, "substituted");
            Objects.requireNonNull(unit, "unit");
            Objects.requireNonNull(source, "source");
        }

        /** The step on one line: {@code R = rho L / A = 17.241 * 100 / 2.5 = 689.64 mohm [IEC 60028]}. */
        public String text() {
            StringBuilder line = new StringBuilder(symbol).append(" = ").append(formula);
            if (!substituted.isEmpty()) {
                line.append(" = ").append(substituted);
            }
            line.append(" = ").append(Figures.of(value));
            if (!unit.isEmpty()) {
                line.append(' ').append(unit);
            }
            if (!source.isEmpty()) {
                line.append(" [").append(source).append(']');
            }
            return line.toString();
        }
    }

    /** The last step. */
    public Step result() {
        return steps.get(steps.size() - 1);
    }

    /** All steps as text, one a line, without a line end after the last. */
    public String text() {
        StringBuilder text = new StringBuilder();
        for (Step step : steps) {
            if (text.length() > 0) {
                text.append('\n');
            }
            text.append(step.text());
        }
        return text.toString();
    }

    /** A derivation of one step. */
    public static Derivation of(Step step) {
        return new Derivation(List.of(step));
    }

    /** Collects steps in order. Not thread safe. */
    public static Builder builder() {
        return new Builder();
    }

    /** Collects the steps of a {@link Derivation}. */
    public static final class Builder {
        private final List<Step> steps = new ArrayList<>();

        private Builder() {
        }

        /** Adds every step of {@code earlier}. */
        public Builder all(Derivation earlier) {
            steps.addAll(earlier.steps());
            return this;
        }

        /** Adds a value that was given, with where it comes from. */
        public Builder given(String symbol, double value, String unit, String source) {
            return step(symbol, "given", "", value, unit, source);
        }

        /** Adds one step. */
        public Builder step(String symbol, String formula, String substituted, double value, String unit,
                String source) {
            steps.add(new Step(symbol, formula, substituted, value, unit, source));
            return this;
        }

        public Derivation build() {
            return new Derivation(steps);
        }
    }
}
