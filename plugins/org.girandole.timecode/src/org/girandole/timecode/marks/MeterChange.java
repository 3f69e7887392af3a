package org.girandole.timecode.marks;

import org.girandole.timecode.TimecodeException;

/**
 * From a place on, a meter.
 *
 * @param tick  ticks from the file's beginning
 * @param beats beats in a bar, 1 to 255
 * @param unit  the note that is a beat: 1, 2, 4, 8, and so on to 64
 */
public record MeterChange(long tick, int beats, int unit) {
	public MeterChange {
		if (tick < 0 || beats < 1 || beats > 255 || unit < 1 || unit > 64 || Integer.bitCount(unit) != 1) {
			throw new TimecodeException("A meter of " + beats + "/" + unit + " at tick " + tick + "; expected 1 to 255 beats of a note 1, 2, 4, 8, 16, 32 or 64");
		}
	}
}
