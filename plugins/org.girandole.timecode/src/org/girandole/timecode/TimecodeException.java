package org.girandole.timecode;

/** Says that a rate, a label or a message of timecode cannot be used. The message is meant for the user: what was found, what was expected. */
public final class TimecodeException extends IllegalArgumentException {
	private static final long serialVersionUID = 1L;

	public TimecodeException(String message) {
		super(message);
	}
}
