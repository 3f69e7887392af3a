package org.girandole.timecode;

import java.util.Arrays;
import java.util.Locale;
import java.util.stream.Collectors;

/**
 * The six frame rates that a show may run on, each an exact fraction of frames per second. Drop-frame counting is defined for 30000/1001
 * alone (SMPTE ST 12-1): it leaves out label numbers, never frames.
 */
public enum FrameRate {
	FPS_23_976("23.976", 24_000, 1_001, 24, false),
	FPS_24("24", 24, 1, 24, false),
	FPS_25("25", 25, 1, 25, false),
	FPS_29_97("29.97", 30_000, 1_001, 30, false),
	FPS_29_97_DROP("29.97", 30_000, 1_001, 30, true),
	FPS_30("30", 30, 1, 30, false);

	/** Label frames of ten drop-frame minutes: 18 000 less two for nine of the ten minutes. */
	static final int DROP_FRAMES_PER_TEN_MINUTES = 17_982;
	/** Label frames of a minute that leaves out its first two labels. */
	static final int DROP_FRAMES_PER_SHORT_MINUTE = 1_798;

	private static final long US_PER_SECOND = 1_000_000;

	private final String number;
	private final int numerator;
	private final int denominator;
	private final int nominal;
	private final boolean dropFrame;

	FrameRate(String number, int numerator, int denominator, int nominal, boolean dropFrame) {
		this.number = number;
		this.numerator = numerator;
		this.denominator = denominator;
		this.nominal = nominal;
		this.dropFrame = dropFrame;
	}

	/**
	 * Reads a rate as a person writes it: {@code 25}, {@code 29.97}, {@code 29.97 drop}, {@code 23.976 fps}, {@code 30000/1001 non-drop}.
	 *
	 * @throws TimecodeException if the words name no supported rate, or ask for drop-frame counting where there is none
	 */
	public static FrameRate parse(String words) {
		String text = words.strip().toLowerCase(Locale.ROOT).replaceAll("\\bfps\\b", " ").strip();
		int split = text.indexOf(' ');
		String number = split < 0 ? text : text.substring(0, split);
		String counting = split < 0 ? "" : text.substring(split).strip();
		boolean drop = switch (counting) {
			case "" -> false;
			case "non-drop", "ndf", "non-drop-frame" -> false;
			case "drop", "df", "drop-frame" -> true;
			default -> throw unknown(words);
		};
		FrameRate plain = switch (number) {
			case "23.976", "23.98", "24000/1001" -> FPS_23_976;
			case "24" -> FPS_24;
			case "25" -> FPS_25;
			case "29.97", "30000/1001" -> FPS_29_97;
			case "30" -> FPS_30;
			default -> throw unknown(words);
		};
		return of(plain, drop);
	}

	private static FrameRate of(FrameRate plain, boolean drop) {
		if (!drop) {
			return plain;
		}
		if (plain != FPS_29_97) {
			throw new TimecodeException("Drop-frame counting is not defined at " + plain.number
					+ " frames a second (SMPTE ST 12-1 defines it at 29.97 only); write \"" + plain.number + "\" or \"29.97 drop\"");
		}
		return FPS_29_97_DROP;
	}

	private static TimecodeException unknown(String words) {
		String known = Arrays.stream(values()).map(FrameRate::words).collect(Collectors.joining(", "));
		return new TimecodeException("\"" + words.strip() + "\" is no timecode rate; expected one of " + known);
	}

	/** The rate as written in a show and understood by {@link #parse}: {@code 25}, {@code 29.97 drop}. */
	public String words() {
		return dropFrame ? number + " drop" : number;
	}

	/** The customary decimal number, without the word for drop-frame: {@code 29.97}. */
	public String number() {
		return number;
	}

	/** Frames in {@link #denominator()} seconds. */
	public int numerator() {
		return numerator;
	}

	/** Seconds in which {@link #numerator()} frames pass. */
	public int denominator() {
		return denominator;
	}

	/** How many frames a label second counts: 24, 25 or 30. */
	public int nominal() {
		return nominal;
	}

	public boolean dropFrame() {
		return dropFrame;
	}

	/** Frames from 00:00:00:00 until the labels begin again. */
	public int framesPerDay() {
		return dropFrame ? DROP_FRAMES_PER_TEN_MINUTES * 6 * 24 : nominal * 86_400;
	}

	/** Frames that pass in one hour of labels. */
	public int framesPerLabelHour() {
		return framesPerDay() / 24;
	}

	/** Frames that have wholly passed after {@code elapsedUs}; negative times give negative frames. */
	public long framesIn(long elapsedUs) {
		long cycleUs = denominator * US_PER_SECOND;
		long cycles = Math.floorDiv(elapsedUs, cycleUs);
		long rest = Math.floorMod(elapsedUs, cycleUs);
		return cycles * numerator + rest * numerator / cycleUs;
	}

	/**
	 * When a frame begins, counted from the beginning of frame 0.
	 *
	 * @throws ArithmeticException if the time does not fit; that is beyond 100 000 years
	 */
	public ExactMicros startOf(long frame) {
		ExactMicros length = frameLength();
		return new ExactMicros(Math.multiplyExact(frame, length.numerator()), length.denominator());
	}

	/** The length of one frame: 40 000 us at 25, 100 100/3 us at 29.97. */
	public ExactMicros frameLength() {
		return new ExactMicros(denominator * US_PER_SECOND, numerator);
	}

	@Override
	public String toString() {
		return words() + " fps";
	}
}
