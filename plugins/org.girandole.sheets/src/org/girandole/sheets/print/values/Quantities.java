package org.girandole.sheets.print.values;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.List;
import java.util.Locale;
import java.util.Optional;

import org.girandole.plan.Times;

/** How numbers are written on paper: one way for each quantity, the same in every locale. */
public final class Quantities {
	/** Stands where the script does not say. */
	public static final String NOT_STATED = "not stated";
	/** Stands before a value that was estimated; every sheet that may carry one explains it. */
	public static final String ESTIMATED = "≈";
	private static final char MINUS = '−';

	private Quantities() {
	}

	/** Show time as {@code m:ss.mmm} from the first note; a minus before the first note. */
	public static String showTime(long us) {
		return Times.clock(us).replace('-', MINUS);
	}

	/** A length of time for a person who waits: tenths of a second below one minute, {@code m:ss} from there. */
	public static String waiting(long us) {
		if (Math.abs(us) < 60_000_000L) {
			return fixed(us / 1e6, 1) + " s";
		}
		long seconds = (us + 500_000) / 1_000_000;
		return String.format(Locale.ROOT, "%d:%02d min", seconds / 60, seconds % 60);
	}

	/** Microseconds as whole milliseconds, half up. */
	public static String milliseconds(long us) {
		return Math.floorDiv(us + 500, 1000L) + " ms";
	}

	/** A resistance in ohms, two decimals. */
	public static String ohm(double ohm) {
		return fixed(ohm, 2);
	}

	/** A length in metres, one decimal. */
	public static String metres(double metres) {
		return fixed(metres, 1) + " m";
	}

	/** A calibre or another small length, given in metres, in millimetres. */
	public static String millimetres(double metres) {
		return plain(metres * 1000, 1) + " mm";
	}

	/** A mass, given in kilograms, in kilograms with three decimals. */
	public static String kilograms(double kg) {
		return fixed(kg, 3) + " kg";
	}

	/** An angle in degrees, at most one decimal. */
	public static String degrees(double degrees) {
		return plain(degrees, 1) + "°";
	}

	/** A value with at most so many decimals and no trailing zeros. */
	public static String plain(double value, int decimals) {
		BigDecimal rounded = BigDecimal.valueOf(value).setScale(decimals, RoundingMode.HALF_UP).stripTrailingZeros();
		return minus(rounded.signum() == 0 ? "0" : rounded.toPlainString());
	}

	/** A value with exactly so many decimals. */
	public static String fixed(double value, int decimals) {
		return minus(BigDecimal.valueOf(value).setScale(decimals, RoundingMode.HALF_UP).toPlainString());
	}

	/** A value, or {@link #NOT_STATED}. */
	public static String orNotStated(Optional<String> value) {
		return value.orElse(NOT_STATED);
	}

	/** A number and its noun in the right number: {@code 1 cue}, {@code 12 cues}. */
	public static String count(long number, String one, String many) {
		return number + " " + (number == 1 ? one : many);
	}

	/** Ascending numbers with runs drawn together: {@code 3, 5–9, 12}. */
	public static String runs(List<Integer> ascending) {
		StringBuilder text = new StringBuilder();
		int i = 0;
		while (i < ascending.size()) {
			int last = i;
			while (last + 1 < ascending.size() && ascending.get(last + 1) == ascending.get(last) + 1) {
				last++;
			}
			if (!text.isEmpty()) {
				text.append(", ");
			}
			text.append(ascending.get(i));
			if (last > i) {
				text.append(last == i + 1 ? ", " : "–").append(ascending.get(last));
			}
			i = last + 1;
		}
		return text.toString();
	}

	private static String minus(String number) {
		return number.startsWith("-") ? MINUS + number.substring(1) : number;
	}
}
