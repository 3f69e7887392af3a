package org.girandole.timecode.wav;

import java.util.Locale;

/**
 * How the samples of a file are stored.
 *
 * @param containerBytes bytes that one sample occupies
 * @param validBits      how many of them carry the sample, from the top
 */
public record WavFormat(Encoding encoding, int sampleRate, int channels, int containerBytes, int validBits) {

	/** The kinds of number that are read. 8-bit samples are unsigned, wider ones signed, all little-endian. */
	public enum Encoding {
		INTEGER, FLOAT
	}

	int frameBytes() {
		return channels * containerBytes;
	}

	/** For a person: {@code 48000 Hz, 2 channels, 24 bit}. */
	@Override
	public String toString() {
		String width = containerBytes * 8 == validBits ? validBits + " bit" : validBits + " bit in " + containerBytes * 8;
		return String.format(Locale.ROOT, "%d Hz, %d %s, %s%s", sampleRate, channels, channels == 1 ? "channel" : "channels", width,
				encoding == Encoding.FLOAT ? " float" : "");
	}
}
