package org.girandole.timecode.ltc;

import java.util.Locale;
import java.util.Optional;

import org.girandole.timecode.FrameRate;
import org.girandole.timecode.Timecode;

/**
 * One word of linear timecode, the 80 bits that a frame carries (SMPTE ST 12-1). The last sixteen are always the sync word; the record keeps
 * the 64 before it, bit 0, which is sent first, in the lowest place.
 *
 * <p>The polarity correction bit, 27 at nominal 24 and 30 frames and 59 at 25, makes the number of zeros even, so that every word begins with
 * a transition of the same direction.
 */
public record LtcWord(long data) {
	public static final int BITS = 80;
	public static final int DATA_BITS = 64;

	/** The sync word, bit 64 in the lowest place: sent as 0011 1111 1111 1101. */
	static final int SYNC = 0xBFFC;

	private static final int FRAMES = 0;
	private static final int FRAME_TENS = 8;
	private static final int DROP_FLAG = 10;
	private static final int COLOUR_FLAG = 11;
	private static final int SECONDS = 16;
	private static final int SECOND_TENS = 24;
	private static final int FLAG_27 = 27;
	private static final int MINUTES = 32;
	private static final int MINUTE_TENS = 40;
	private static final int HOURS = 48;
	private static final int HOUR_TENS = 56;
	private static final int CLOCK_FLAG = 58;
	private static final int FLAG_59 = 59;
	private static final int NOMINAL_WITH_FLAG_59 = 25;

	/** The bits that hold the digits of the label, and nothing else. */
	public static final long LABEL_MASK = 0xFL << FRAMES | 0x3L << FRAME_TENS | 0xFL << SECONDS | 0x7L << SECOND_TENS | 0xFL << MINUTES
			| 0x7L << MINUTE_TENS | 0xFL << HOURS | 0x3L << HOUR_TENS;
	/** The drop-frame flag. */
	public static final long DROP_MASK = 1L << DROP_FLAG;
	/** The bits of the binary groups. */
	public static final long USER_MASK = 0xF0F0_F0F0_F0F0_F0F0L;

	/** The word of a label, with these user bits (group 1 lowest), no other flags, and the polarity corrected. */
	public static LtcWord of(Timecode label, int userBits) {
		long data = labelBits(label.hours(), label.minutes(), label.seconds(), label.frames());
		if (label.rate().dropFrame()) {
			data |= 1L << DROP_FLAG;
		}
		for (int group = 0; group < 8; group++) {
			data |= (userBits >>> 4 * group & 0xFL) << 8 * group + 4;
		}
		return new LtcWord(data).withPolarityCorrected(label.rate());
	}

	/** The data bits of a label's digits; every other bit 0. */
	public static long labelBits(int hours, int minutes, int seconds, int frames) {
		return bcd(frames, FRAMES, FRAME_TENS) | bcd(seconds, SECONDS, SECOND_TENS) | bcd(minutes, MINUTES, MINUTE_TENS) | bcd(hours, HOURS, HOUR_TENS);
	}

	/** This word with an even number of zeros among its 80 bits. */
	private LtcWord withPolarityCorrected(FrameRate rate) {
		return evenZeros() ? this : new LtcWord(data ^ 1L << (rate.nominal() == NOMINAL_WITH_FLAG_59 ? FLAG_59 : FLAG_27));
	}

	/** True if the 80 bits hold an even number of zeros, as every word should. */
	public boolean evenZeros() {
		return (Long.bitCount(data) + Integer.bitCount(SYNC)) % 2 == 0;
	}

	public boolean bit(int index) {
		return index < DATA_BITS ? (data >>> index & 1) != 0 : (SYNC >>> index - DATA_BITS & 1) != 0;
	}

	public int hours() {
		return digits(HOURS, HOUR_TENS, 0x3);
	}

	public int minutes() {
		return digits(MINUTES, MINUTE_TENS, 0x7);
	}

	public int seconds() {
		return digits(SECONDS, SECOND_TENS, 0x7);
	}

	public int frames() {
		return digits(FRAMES, FRAME_TENS, 0x3);
	}

	public boolean dropFrame() {
		return bit(DROP_FLAG);
	}

	public boolean colourFrame() {
		return bit(COLOUR_FLAG);
	}

	/** The flag that says that the label is the time of day. */
	public boolean clock() {
		return bit(CLOCK_FLAG);
	}

	/** The 32 user bits, binary group 1 in the lowest four. */
	public int userBits() {
		int bits = 0;
		for (int group = 0; group < 8; group++) {
			bits |= (int) (data >>> 8 * group + 4 & 0xF) << 4 * group;
		}
		return bits;
	}

	/** True if the digits are a time of day, whatever the rate: a word torn by noise is often caught by this. */
	public boolean isTime() {
		return unit(FRAMES) <= 9 && unit(SECONDS) <= 9 && unit(MINUTES) <= 9 && unit(HOURS) <= 9 && frames() < 30 && seconds() < 60 && minutes() < 60
				&& hours() < 24;
	}

	/** The label of this word at a rate; empty if the digits are no label there, or one that drop-frame counting leaves out. */
	public Optional<Timecode> label(FrameRate rate) {
		return isTime() && Timecode.exists(hours(), minutes(), seconds(), frames(), rate)
				? Optional.of(new Timecode(hours(), minutes(), seconds(), frames(), rate))
				: Optional.empty();
	}

	/** The digits as they stand, be they a label or not. */
	public String digits() {
		return String.format(Locale.ROOT, "%02d:%02d:%02d%s%02d", hours(), minutes(), seconds(), dropFrame() ? ";" : ":", frames());
	}

	/** The ten bytes, the first one sent first, and in each the lowest bit first. */
	public byte[] toBytes() {
		byte[] bytes = new byte[BITS / 8];
		for (int i = 0; i < 8; i++) {
			bytes[i] = (byte) (data >>> 8 * i);
		}
		bytes[8] = (byte) SYNC;
		bytes[9] = (byte) (SYNC >>> 8);
		return bytes;
	}

	private int unit(int place) {
		return (int) (data >>> place & 0xF);
	}

	private int digits(int units, int tens, int tensMask) {
		return unit(units) + 10 * (int) (data >>> tens & tensMask);
	}

	private static long bcd(int value, int units, int tens) {
		return (long) (value % 10) << units | (long) (value / 10) << tens;
	}
}
