package org.girandole.timecode.wav;

import java.io.ByteArrayOutputStream;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.charset.StandardCharsets;

/** Puts WAV files together by hand, so that every field can be wrong. */
final class WavBytes {
	private final ByteArrayOutputStream bytes = new ByteArrayOutputStream();

	WavBytes text(String ascii) {
		bytes.writeBytes(ascii.getBytes(StandardCharsets.ISO_8859_1));
		return this;
	}

	WavBytes u32(long value) {
		return put(4, value);
	}

	WavBytes u16(int value) {
		return put(2, value);
	}

	WavBytes u64(long value) {
		return put(8, value);
	}

	WavBytes f32(float value) {
		return put(4, Float.floatToRawIntBits(value));
	}

	WavBytes f64(double value) {
		return put(8, Double.doubleToRawLongBits(value));
	}

	WavBytes raw(int... values) {
		for (int value : values) {
			bytes.write(value);
		}
		return this;
	}

	WavBytes riff(long size) {
		return text("RIFF").u32(size).text("WAVE");
	}

	WavBytes format(int tag, int channels, long sampleRate, int blockBytes, int bits) {
		return text("fmt ").u32(16).u16(tag).u16(channels).u32(sampleRate).u32(sampleRate * blockBytes).u16(blockBytes).u16(bits);
	}

	private WavBytes put(int size, long value) {
		bytes.write(ByteBuffer.allocate(8).order(ByteOrder.LITTLE_ENDIAN).putLong(value).array(), 0, size);
		return this;
	}

	byte[] done() {
		return bytes.toByteArray();
	}
}
