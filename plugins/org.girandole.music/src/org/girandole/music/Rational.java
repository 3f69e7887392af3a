package org.girandole.music;

import java.math.BigDecimal;
import java.math.BigInteger;
import java.math.MathContext;
import java.util.Objects;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * An exact fraction in lowest terms with a positive denominator. Immutable.
 *
 * <p>Arithmetic never overflows: a tempo map with many changes adds fractions whose common denominator leaves 64 bits
 * behind quickly. Only {@link #num()}, {@link #den()}, {@link #floor()}, {@link #ceil()} and {@link #roundHalfUp()},
 * which promise a {@code long}, can fail, with an {@link ArithmeticException}.
 */
public final class Rational implements Comparable<Rational> {
    public static final Rational ZERO = new Rational(BigInteger.ZERO, BigInteger.ONE);
    public static final Rational ONE = new Rational(BigInteger.ONE, BigInteger.ONE);

    /** Up to 18 digits a part: more is a slip of the finger, and long digit strings are slow to read. */
    private static final Pattern TEXT = Pattern.compile("([+-]?)(\\d{1,18})(?:/(\\d{1,18})|\\.(\\d{1,18}))?");

    private final BigInteger num;
    private final BigInteger den;

    private Rational(BigInteger lowestNum, BigInteger lowestDen) {
        this.num = lowestNum;
        this.den = lowestDen;
    }

    /** A whole number. */
    public static Rational of(long value) {
        return new Rational(BigInteger.valueOf(value), BigInteger.ONE);
    }

    /** {@code num / den}, reduced. @throws ArithmeticException if {@code den} is zero */
    public static Rational of(long num, long den) {
        return reduced(BigInteger.valueOf(num), BigInteger.valueOf(den));
    }

    /** The exact value of a decimal number. */
    public static Rational of(BigDecimal value) {
        BigDecimal plain = Objects.requireNonNull(value, "value");
        return plain.scale() <= 0
                ? new Rational(plain.toBigIntegerExact(), BigInteger.ONE)
                : reduced(plain.unscaledValue(), BigInteger.TEN.pow(plain.scale()));
    }

    /**
     * Reads {@code 3}, {@code -3}, {@code 3.5}, {@code 1/2}.
     *
     * @throws NumberFormatException for anything else, with a message for the user
     */
    public static Rational parse(String text) {
        Matcher m = TEXT.matcher(text);
        if (!m.matches()) {
            throw new NumberFormatException("'" + shortened(text)
                    + "' is not a number; write it as 3, 3.5 or 1/2, with at most 18 digits in each part");
        }
        BigInteger whole = new BigInteger(m.group(2));
        Rational value;
        if (m.group(3) != null) {
            BigInteger den = new BigInteger(m.group(3));
            if (den.signum() == 0) {
                throw new NumberFormatException("'" + text + "' divides by zero");
            }
            value = reduced(whole, den);
        } else if (m.group(4) != null) {
            value = of(new BigDecimal(m.group(2) + "." + m.group(4)));
        } else {
            value = new Rational(whole, BigInteger.ONE);
        }
        return m.group(1).equals("-") ? value.negate() : value;
    }

    private static String shortened(String text) {
        return text.length() <= 40 ? text : text.substring(0, 40) + "...";
    }

    private static Rational reduced(BigInteger num, BigInteger den) {
        if (den.signum() == 0) {
            throw new ArithmeticException("division by zero");
        }
        if (den.equals(BigInteger.ONE)) {
            return new Rational(num, den);
        }
        BigInteger gcd = num.gcd(den);
        BigInteger divisor = den.signum() < 0 ? gcd.negate() : gcd;
        return new Rational(num.divide(divisor), den.divide(divisor));
    }

    /** Numerator in lowest terms; carries the sign. @throws ArithmeticException if it needs more than 64 bits */
    public long num() {
        return num.longValueExact();
    }

    /** Denominator in lowest terms, positive. @throws ArithmeticException if it needs more than 64 bits */
    public long den() {
        return den.longValueExact();
    }

    public Rational plus(Rational other) {
        // Whole microseconds and beats are what is added most; they need no common denominator.
        return isWhole() && other.isWhole() ? new Rational(num.add(other.num), BigInteger.ONE) : reduced(num.multiply(other.den).add(other.num.multiply(den)), den.multiply(other.den));
    }

    public Rational minus(Rational other) {
        return plus(other.negate());
    }

    public Rational times(Rational other) {
        return reduced(num.multiply(other.num), den.multiply(other.den));
    }

    public Rational times(long factor) {
        return times(of(factor));
    }

    /** @throws ArithmeticException if {@code other} is zero */
    public Rational dividedBy(Rational other) {
        return reduced(num.multiply(other.den), den.multiply(other.num));
    }

    public Rational negate() {
        return new Rational(num.negate(), den);
    }

    public Rational abs() {
        return num.signum() < 0 ? negate() : this;
    }

    /** -1, 0 or 1. */
    public int signum() {
        return num.signum();
    }

    public boolean isWhole() {
        return den.equals(BigInteger.ONE);
    }

    /** The greatest whole number not above this. */
    public long floor() {
        return floorOf(num).longValueExact();
    }

    /** The smallest whole number not below this. */
    public long ceil() {
        return floorOf(num.negate()).negate().longValueExact();
    }

    /** The nearest whole number; exactly half goes up, toward positive infinity. */
    public long roundHalfUp() {
        if (isWhole()) {
            return num.longValueExact();
        }
        BigInteger doubled = num.shiftLeft(1).add(den);
        return doubled.subtract(doubled.mod(den.shiftLeft(1))).divide(den.shiftLeft(1)).longValueExact();
    }

    private BigInteger floorOf(BigInteger numerator) {
        return numerator.subtract(numerator.mod(den)).divide(den);
    }

    /** The nearest {@code double}, for drawing and for irrational tempo laws; never for show time. */
    public double toDouble() {
        return new BigDecimal(num).divide(new BigDecimal(den), MathContext.DECIMAL64).doubleValue();
    }

    public Rational min(Rational other) {
        return compareTo(other) <= 0 ? this : other;
    }

    public Rational max(Rational other) {
        return compareTo(other) >= 0 ? this : other;
    }

    @Override
    public int compareTo(Rational other) {
        return isWhole() && other.isWhole() ? num.compareTo(other.num) : num.multiply(other.den).compareTo(other.num.multiply(den));
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof Rational r && num.equals(r.num) && den.equals(r.den);
    }

    @Override
    public int hashCode() {
        return Objects.hash(num, den);
    }

    /** {@code 3}, {@code 3.5} where at most six decimals are exact, else {@code 1/3}; {@link #parse} reads it back. */
    @Override
    public String toString() {
        if (isWhole()) {
            return num.toString();
        }
        BigInteger[] millionths = num.multiply(BigInteger.valueOf(1_000_000)).divideAndRemainder(den);
        return millionths[1].signum() == 0
                ? new BigDecimal(millionths[0], 6).stripTrailingZeros().toPlainString()
                : num + "/" + den;
    }
}
