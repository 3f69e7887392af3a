package org.girandole.timecode.wav;

import java.io.IOException;

/** Says why a file cannot be read as audio. The message is meant for the user. */
public final class WavException extends IOException {
	private static final long serialVersionUID = 1L;

	public WavException(String message) {
		super(message);
	}
}
