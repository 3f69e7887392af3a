package org.girandole.timecode.wav;

import org.girandole.timecode.TimecodeException;

/**
 * A named place in an audio file.
 *
 * @param frame in sample frames from its beginning
 * @param label its name; may be empty
 * @param note  a remark beside the name; empty for none
 */
public record CuePoint(long frame, String label, String note) {
	/** The largest place that the chunk's 32-bit field can hold. */
	static final long LAST_FRAME = 0xFFFF_FFFFL;

	public CuePoint {
		if (frame < 0 || frame > LAST_FRAME) {
			throw new TimecodeException("A cue point at sample " + frame + "; WAV files hold 0 to " + LAST_FRAME);
		}
		if (label.indexOf('\0') >= 0 || note.indexOf('\0') >= 0) {
			throw new TimecodeException("The label of the cue point at sample " + frame + " holds a null character, which would end it in a WAV file");
		}
	}

	/** A cue point without a note. */
	public CuePoint(long frame, String label) {
		this(frame, label, "");
	}
}
