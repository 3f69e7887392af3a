package org.girandole.timecode;

import java.util.Locale;

/**
 * An exact count of microseconds: a fraction in lowest terms, the denominator positive. Frame boundaries of every supported rate are whole
 * thirds of a microsecond, so that no rounding is needed until a person or a file asks for whole microseconds.
 */
public record ExactMicros(long numerator, long denominator) implements Comparable<ExactMicros> {
	public static final ExactMicros ZERO = new ExactMicros(0, 1);

	public ExactMicros {
		if (denominator <= 0) {
			throw new ArithmeticException("Denominator " + denominator + ", expected a positive one");
		}
		long common = gcd(Math.abs(numerator), denominator);
		numerator /= common;
		denominator /= common;
	}

	public static ExactMicros of(long us) {
		return new ExactMicros(us, 1);
	}

	/** The largest whole count of microseconds that is not above this. */
	public long floorUs() {
		return Math.floorDiv(numerator, denominator);
	}

	/** The smallest whole count of microseconds that is not below this. */
	public long ceilUs() {
		return -Math.floorDiv(-numerator, denominator);
	}

	/** The nearest whole count of microseconds, halves upwards. */
	public long roundUs() {
		return Math.floorDiv(Math.addExact(Math.multiplyExact(2, numerator), denominator), 2 * denominator);
	}

	public ExactMicros minus(ExactMicros other) {
		return new ExactMicros(
				Math.subtractExact(Math.multiplyExact(numerator, other.denominator), Math.multiplyExact(other.numerator, denominator)),
				Math.multiplyExact(denominator, other.denominator));
	}

	@Override
	public int compareTo(ExactMicros other) {
		return minus(other).signum();
	}

	public int signum() {
		return Long.signum(numerator);
	}

	public boolean isWhole() {
		return denominator == 1;
	}

	/** For a person: {@code 33366 2/3 us}. */
	@Override
	public String toString() {
		if (isWhole()) {
			return numerator + " us";
		}
		long whole = numerator / denominator;
		long rest = Math.abs(numerator % denominator);
		String sign = numerator < 0 && whole == 0 ? "-" : "";
		String head = whole == 0 ? sign : whole + " ";
		return String.format(Locale.ROOT, "%s%d/%d us", head, rest, denominator);
	}

	private static long gcd(long a, long b) {
		while (b != 0) {
			long rest = a % b;
			a = b;
			b = rest;
		}
		return a;
	}
}
