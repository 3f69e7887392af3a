package org.girandole.timecode.marks;

import org.girandole.timecode.TimecodeException;

/**
 * From a place on, a tempo.
 *
 * @param tick         ticks from the file's beginning
 * @param usPerQuarter microseconds a quarter note lasts: 1 to 16 777 215
 */
public record TempoChange(long tick, int usPerQuarter) {
	/** The longest quarter note that the file's 24 bits can hold. */
	public static final int SLOWEST = 0xFF_FFFF;
	/** What holds before the first change: 120 quarter notes a minute (Standard MIDI Files 1.0). */
	public static final int DEFAULT = 500_000;

	public TempoChange {
		if (tick < 0 || usPerQuarter < 1 || usPerQuarter > SLOWEST) {
			throw new TimecodeException("A tempo of " + usPerQuarter + " us a quarter note at tick " + tick + "; expected 1 to " + SLOWEST + ", from tick 0 on");
		}
	}
}
