package org.girandole.lang.compile;

import java.math.BigDecimal;
import java.util.Optional;
import java.util.OptionalInt;

/** Reads numbers, and refuses those that are too long or too large before anything is computed with them. */
final class Numbers {
    private static final int MOST_DIGITS = 30;

    private Numbers() {
    }

    /** Empty when the number has more than 30 digits before or after its point. */
    static Optional<BigDecimal> decimal(String text) {
        if (text.length() > 2 * MOST_DIGITS) {
            return Optional.empty();
        }
        try {
            BigDecimal number = new BigDecimal(text);
            long integerDigits = (long) number.precision() - number.scale();
            return integerDigits > MOST_DIGITS || number.scale() > MOST_DIGITS ? Optional.empty() : Optional.of(number);
        } catch (NumberFormatException e) {
            return Optional.empty();
        }
    }

    /** Empty when the digits make no {@code int}. */
    static OptionalInt whole(String digits) {
        try {
            return OptionalInt.of(Integer.parseInt(digits));
        } catch (NumberFormatException e) {
            return OptionalInt.empty();
        }
    }
}
