package org.girandole.timecode;

import java.util.Locale;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * A timecode label: hours, minutes, seconds and frames at a rate. Only labels that exist can be made: in drop-frame counting the first two
 * labels of each minute are left out, save in minutes 0, 10, 20, 30, 40 and 50 (SMPTE ST 12-1).
 */
public record Timecode(int hours, int minutes, int seconds, int frames, FrameRate rate) {
	private static final Pattern LABEL = Pattern.compile("(\\d{1,2}):(\\d{1,2}):(\\d{1,2})([:;])(\\d{1,2})");
	private static final int DROPPED_LABELS = 2;

	/** @throws TimecodeException if there is no such label at this rate */
	public Timecode {
		check(hours, 23, "hours");
		check(minutes, 59, "minutes");
		check(seconds, 59, "seconds");
		if (frames < 0 || frames >= rate.nominal()) {
			throw new TimecodeException("Timecode " + write(hours, minutes, seconds, frames, rate) + " counts frame " + frames + ", but at " + rate
					+ " the frames of a second are 0 to " + (rate.nominal() - 1));
		}
		if (leftOut(minutes, seconds, frames, rate)) {
			throw new TimecodeException("Timecode " + write(hours, minutes, seconds, frames, rate)
					+ " does not exist: drop-frame counting leaves out ;00 and ;01 at the start of this minute; the first label of the minute is "
					+ write(hours, minutes, seconds, DROPPED_LABELS, rate));
		}
	}

	/**
	 * Reads {@code hh:mm:ss:ff}, or {@code hh:mm:ss;ff} at a drop-frame rate, which also takes the colon.
	 *
	 * @throws TimecodeException if the text is no label, or no such label exists at this rate
	 */
	public static Timecode parse(String text, FrameRate rate) {
		Matcher match = LABEL.matcher(text.strip());
		if (!match.matches()) {
			throw new TimecodeException("\"" + text.strip() + "\" is no timecode label; expected hours, minutes, seconds and frames, as in "
					+ new Timecode(10, 0, 0, 0, rate));
		}
		if (match.group(4).equals(";") && !rate.dropFrame()) {
			throw new TimecodeException("\"" + text.strip() + "\" is written as a drop-frame label (;), but the rate is " + rate
					+ "; write a colon before the frames, or the rate \"29.97 drop\"");
		}
		return new Timecode(number(match, 1), number(match, 2), number(match, 3), number(match, 5), rate);
	}

	/** The label of a frame counted from 00:00:00:00; labels begin again after 24 hours, and run backwards below zero. */
	public static Timecode ofFrame(long frame, FrameRate rate) {
		long number = Math.floorMod(frame, (long) rate.framesPerDay());
		if (rate.dropFrame()) {
			number += leftOutBefore(number);
		}
		int count = (int) (number % rate.nominal());
		int second = (int) (number / rate.nominal());
		return new Timecode(second / 3600, second / 60 % 60, second % 60, count, rate);
	}

	/** True if these numbers are a label that exists at the rate. */
	public static boolean exists(int hours, int minutes, int seconds, int frames, FrameRate rate) {
		return within(hours, 23) && within(minutes, 59) && within(seconds, 59) && within(frames, rate.nominal() - 1)
				&& !leftOut(minutes, seconds, frames, rate);
	}

	/** How many frames have passed since 00:00:00:00. */
	public int frameOfDay() {
		int totalMinutes = 60 * hours + minutes;
		int number = rate.nominal() * (60 * totalMinutes + seconds) + frames;
		return rate.dropFrame() ? number - DROPPED_LABELS * (totalMinutes - totalMinutes / 10) : number;
	}

	/** The label so many frames later; earlier if negative. */
	public Timecode plusFrames(long count) {
		return ofFrame(frameOfDay() + Math.floorMod(count, (long) rate.framesPerDay()), rate);
	}

	/** How many frames after {@code earlier} this label next comes: 0 up to a day less one frame. */
	public int framesAfter(Timecode earlier) {
		requireSameRate(earlier);
		return Math.floorMod(frameOfDay() - earlier.frameOfDay(), rate.framesPerDay());
	}

	private void requireSameRate(Timecode other) {
		if (rate != other.rate) {
			throw new TimecodeException("Timecode " + this + " counts at " + rate + ", but " + other + " counts at " + other.rate
					+ "; both must have the same rate");
		}
	}

	/** {@code hh:mm:ss:ff}, with a semicolon before the frames when they are counted drop-frame. */
	@Override
	public String toString() {
		return write(hours, minutes, seconds, frames, rate);
	}

	private static String write(int hours, int minutes, int seconds, int frames, FrameRate rate) {
		return String.format(Locale.ROOT, "%02d:%02d:%02d%s%02d", hours, minutes, seconds, rate.dropFrame() ? ";" : ":", frames);
	}

	private static boolean leftOut(int minutes, int seconds, int frames, FrameRate rate) {
		return rate.dropFrame() && minutes % 10 != 0 && seconds == 0 && frames < DROPPED_LABELS;
	}

	private static long leftOutBefore(long frame) {
		long tens = frame / FrameRate.DROP_FRAMES_PER_TEN_MINUTES;
		long rest = frame % FrameRate.DROP_FRAMES_PER_TEN_MINUTES;
		long shortMinutes = rest < DROPPED_LABELS ? 0 : (rest - DROPPED_LABELS) / FrameRate.DROP_FRAMES_PER_SHORT_MINUTE;
		return DROPPED_LABELS * (9 * tens + shortMinutes);
	}

	private static int number(Matcher match, int group) {
		return Integer.parseInt(match.group(group));
	}

	private static void check(int value, int most, String what) {
		if (!within(value, most)) {
			throw new TimecodeException("Timecode with " + value + " " + what + "; expected 0 to " + most);
		}
	}

	private static boolean within(int value, int most) {
		return value >= 0 && value <= most;
	}
}
