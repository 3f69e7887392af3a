package org.girandole.plan.table;

import java.math.BigDecimal;

/** What stands in one cell of a table. */
public sealed interface Cell {
    /** A cell with nothing in it: the value does not apply, or is not known. */
    Cell EMPTY = new Empty();

    /** The characters of the cell, the same on every machine. */
    String text();

    /** Words, names, labels and times of day: never taken as a number. */
    record Text(String text) implements Cell {
    }

    /** A number, exactly as it is to be shown; its scale counts. */
    record Number(BigDecimal value) implements Cell {
        @Override
        public String text() {
            return value.toPlainString();
        }
    }

    /** Nothing. */
    record Empty() implements Cell {
        @Override
        public String text() {
            return "";
        }
    }

    static Cell of(String text) {
        return text.isEmpty() ? EMPTY : new Text(text);
    }

    static Cell of(long value) {
        return new Number(BigDecimal.valueOf(value));
    }

    static Cell of(BigDecimal value) {
        return new Number(value);
    }
}
