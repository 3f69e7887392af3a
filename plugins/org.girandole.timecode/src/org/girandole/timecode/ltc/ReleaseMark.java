package org.girandole.timecode.ltc;

import java.util.Locale;
import java.util.Objects;

import org.girandole.timecode.TimecodeException;

/**
 * What the user bits of a show's timecode say: the slot in which the controller must hold the show, and the first eight hexadecimal digits
 * of the release stamp. Whoever reads a recording can tell whether it is this show's, and this release's.
 *
 * @param slot  0 to 255
 * @param stamp eight hexadecimal digits, lower case
 */
public record ReleaseMark(int slot, String stamp) {
	static final int STAMP_DIGITS = 8;

	/** @throws TimecodeException if the slot is out of range or the stamp has fewer than eight hexadecimal digits; longer ones are cut */
	public ReleaseMark {
		Objects.requireNonNull(stamp, "stamp");
		if (slot < 0 || slot > 255) {
			throw new TimecodeException("Slot " + slot + " cannot be carried in the user bits of the timecode; expected 0 to 255");
		}
		if (!stamp.matches("[0-9a-fA-F]{" + STAMP_DIGITS + ",}")) {
			throw new TimecodeException("Release stamp \"" + stamp + "\" cannot be carried in the user bits of the timecode; expected at least "
					+ STAMP_DIGITS + " hexadecimal digits");
		}
		stamp = stamp.substring(0, STAMP_DIGITS).toLowerCase(Locale.ROOT);
	}

	/** The stamp as it stands on every sheet: two groups of four, upper case. */
	public String printed() {
		String upper = stamp.toUpperCase(Locale.ROOT);
		return upper.substring(0, STAMP_DIGITS / 2) + "-" + upper.substring(STAMP_DIGITS / 2);
	}
}
