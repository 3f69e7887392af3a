package org.girandole.timecode.marks;

import java.util.Objects;

import org.girandole.timecode.TimecodeException;

/** A named moment, in microseconds from the file's beginning. */
public record Mark(long timeUs, String name) {
	/** @throws TimecodeException for a time before the file's beginning */
	public Mark {
		Objects.requireNonNull(name, "name");
		if (timeUs < 0) {
			throw new TimecodeException("Mark \"" + name + "\" lies " + -timeUs + " us before the beginning of the file; let the file begin earlier");
		}
	}

	/** Moves the mark: from show time to the time of a file, and back. */
	public Mark moved(long byUs) {
		return new Mark(Math.addExact(timeUs, byUs), name);
	}
}
