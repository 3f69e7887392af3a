package org.girandole.plan.rules;

import java.math.BigDecimal;
import java.math.MathContext;
import java.math.RoundingMode;
import org.girandole.plan.Times;

/** Quantities in words that a person can compare, the same in every locale. */
public final class Quantity {
    private static final MathContext THREE_DIGITS = new MathContext(3, RoundingMode.HALF_UP);
    private static final long US_PER_SECOND = 1_000_000;

    private Quantity() {
    }

    /** A moment of a soundtrack, minutes:seconds from the first note: {@code 0:12.480}; to the microsecond only where it must be. */
    public static String moment(long us) {
        return Times.exactClock(us);
    }

    /** A length of time: milliseconds below a second, seconds from there on. */
    public static String span(long us) {
        boolean small = Math.abs(us) < US_PER_SECOND;
        return plain(BigDecimal.valueOf(us).movePointLeft(small ? 3 : 6)) + (small ? " ms" : " s");
    }

    /** A length of time that is at least this long, in whole milliseconds: for advice on how far to move something. */
    public static String atLeast(long us) {
        return span(Math.floorDiv(us + 999, 1000) * 1000);
    }

    /** A tolerance band around a moment. */
    public static String plusMinus(long us) {
        return "+- " + span(us);
    }

    /** A size such as a calibre, given in metres, to a tenth of a millimetre. */
    public static String millimetres(double m) {
        return plain(BigDecimal.valueOf(m).movePointRight(3).setScale(1, RoundingMode.HALF_UP)) + " mm";
    }

    /** A length on the ground, to a tenth of a metre. */
    public static String metres(double m) {
        return plain(BigDecimal.valueOf(m).setScale(1, RoundingMode.HALF_UP)) + " m";
    }

    /** A current, three significant digits. */
    public static String amperes(double a) {
        return plain(BigDecimal.valueOf(a).round(THREE_DIGITS)) + " A";
    }

    /** An angle, to a tenth of a degree. */
    public static String degrees(double deg) {
        return plain(BigDecimal.valueOf(deg).setScale(1, RoundingMode.HALF_UP)) + " deg";
    }

    /** A number of things: {@code 1 pin}, {@code 3 pins}. */
    public static String count(long n, String one, String many) {
        return n + " " + (n == 1 ? one : many);
    }

    /** A bare number without needless zeros. */
    public static String number(double value) {
        return plain(BigDecimal.valueOf(value).round(THREE_DIGITS));
    }

    private static String plain(BigDecimal value) {
        return value.signum() == 0 ? "0" : value.stripTrailingZeros().toPlainString();
    }
}
