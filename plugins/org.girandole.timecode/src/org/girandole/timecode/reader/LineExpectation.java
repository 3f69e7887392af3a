package org.girandole.timecode.reader;

import java.util.Optional;

import org.girandole.timecode.TimecodeLine;
import org.girandole.timecode.ltc.ReleaseMark;

/**
 * What a recording ought to hold.
 *
 * @param line     the show's timecode, if it is known
 * @param lengthUs from the first note to the end of the last effect; 0 if it is not known
 * @param mark     the slot and stamp of the release, if they are known
 */
public record LineExpectation(Optional<TimecodeLine> line, long lengthUs, Optional<ReleaseMark> mark) {

	/** Nothing is known beforehand. */
	public static LineExpectation none() {
		return new LineExpectation(Optional.empty(), 0, Optional.empty());
	}
}
