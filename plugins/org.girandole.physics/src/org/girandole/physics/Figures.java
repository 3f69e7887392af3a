package org.girandole.physics;

import java.math.BigDecimal;
import java.math.MathContext;
import java.math.RoundingMode;

/** Numbers as they stand in messages and derivations: at most six significant digits, no exponent, a decimal point. */
public final class Figures {
    private static final MathContext SIX_DIGITS = new MathContext(6, RoundingMode.HALF_UP);

    private Figures() {
    }

    /** {@code value} with at most six significant digits and no trailing zeros; the same in every locale. */
    public static String of(double value) {
        if (Double.isNaN(value) || Double.isInfinite(value)) {
            return Double.toString(value);
        }
        BigDecimal rounded = BigDecimal.valueOf(value).round(SIX_DIGITS);
        return rounded.signum() == 0 ? "0" : rounded.stripTrailingZeros().toPlainString();
    }
}
