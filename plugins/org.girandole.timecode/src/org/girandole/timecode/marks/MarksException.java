package org.girandole.timecode.marks;

import java.io.IOException;

/** Says why a file of marks cannot be read. The message is meant for the user. */
public final class MarksException extends IOException {
	private static final long serialVersionUID = 1L;

	public MarksException(String message) {
		super(message);
	}

	public MarksException(String message, Throwable cause) {
		super(message, cause);
	}
}
