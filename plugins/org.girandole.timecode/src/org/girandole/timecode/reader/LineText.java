package org.girandole.timecode.reader;

import java.util.Locale;

/** Numbers as a person reads them. */
final class LineText {
	private LineText() {
	}

	/** {@code 0:04.120}; with hours from the first one on. */
	static String time(double seconds) {
		long ms = Math.round(Math.abs(seconds) * 1000);
		String sign = seconds < 0 && ms > 0 ? "-" : "";
		long minutes = ms / 60_000;
		String tail = String.format(Locale.ROOT, "%02d.%03d", ms / 1000 % 60, ms % 1000);
		return minutes < 60 ? sign + minutes + ":" + tail : String.format(Locale.ROOT, "%s%d:%02d:%s", sign, minutes / 60, minutes % 60, tail);
	}

	static String one(double value) {
		return String.format(Locale.ROOT, "%.1f", value);
	}

	static String whole(double value) {
		return String.format(Locale.ROOT, "%.0f", value);
	}

	static String signed(double value) {
		// Adding zero takes the sign from what would be written as -0.
		return String.format(Locale.ROOT, "%+.0f", Math.rint(value) + 0.0);
	}

	static String count(long number, String one, String many) {
		return number + " " + (number == 1 ? one : many);
	}
}
