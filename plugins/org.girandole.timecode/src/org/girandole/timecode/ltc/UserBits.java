package org.girandole.timecode.ltc;

import java.util.Locale;
import java.util.Optional;

/**
 * The layout of the 32 user bits. A word carries one of two pages, the first page in frames with an even number of the second and the second
 * page in the others, so that two successive words always tell all. By binary group (group 1 in the lowest four bits):
 *
 * <pre>
 * group   first page                  second page
 * 1       C (page marker)             D (page marker)
 * 2       slot, lower half            slot, lower half
 * 3       slot, upper half            slot, upper half
 * 4..7    stamp digits 1 to 4         stamp digits 5 to 8
 * 8       check over groups 1 to 7    check over groups 1 to 7
 * </pre>
 *
 * The check is the four-bit remainder of the 28 bits, group 1 first and in each group the highest bit first, by x^4 + x + 1 (the polynomial
 * of ITU-T G.704). The binary group flags stay 0: by SMPTE ST 12-1 the groups then have no announced character set. User bits of any other
 * layout, and empty ones, fail the marker or the check and are not taken for a mark.
 */
public final class UserBits {
	private static final int FIRST_PAGE = 0xC;
	private static final int SECOND_PAGE = 0xD;
	private static final int DIGITS_PER_PAGE = 4;

	private UserBits() {
	}

	/** Half of a mark, as one word carries it. */
	public record Page(boolean first, int slot, String digits) {
	}

	/** The user bits of a frame; {@code frame} is the frame number of its label. */
	public static int of(ReleaseMark mark, int frame) {
		boolean first = frame % 2 == 0;
		int bits = first ? FIRST_PAGE : SECOND_PAGE;
		bits |= mark.slot() << 4;
		for (int i = 0; i < DIGITS_PER_PAGE; i++) {
			int digit = Character.digit(mark.stamp().charAt(first ? i : DIGITS_PER_PAGE + i), 16);
			bits |= digit << (12 + 4 * i);
		}
		return bits | check(bits) << 28;
	}

	/** The page in these user bits; empty if they are of another layout. */
	public static Optional<Page> page(int bits) {
		int marker = bits & 0xF;
		if (marker != FIRST_PAGE && marker != SECOND_PAGE || bits >>> 28 != check(bits)) {
			return Optional.empty();
		}
		StringBuilder digits = new StringBuilder();
		for (int i = 0; i < DIGITS_PER_PAGE; i++) {
			digits.append(Character.forDigit(bits >>> (12 + 4 * i) & 0xF, 16));
		}
		return Optional.of(new Page(marker == FIRST_PAGE, bits >>> 4 & 0xFF, digits.toString()));
	}

	/** The user bits as eight hexadecimal digits, group 8 first. */
	public static String hex(int bits) {
		return String.format(Locale.ROOT, "%08x", bits);
	}

	private static int check(int bits) {
		int remainder = 0;
		for (int group = 0; group < 7; group++) {
			int value = bits >>> (4 * group) & 0xF;
			for (int bit = 3; bit >= 0; bit--) {
				int carry = remainder >>> 3 ^ value >>> bit & 1;
				remainder = remainder << 1 & 0xF ^ (carry == 0 ? 0 : 0b0011);
			}
		}
		return remainder;
	}
}
