package org.girandole.timecode.wav;

import java.io.Closeable;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.ByteBuffer;
import java.util.List;

/**
 * Writes a WAV file from its beginning to its end, so that any stream will do and no length of audio needs more memory. The number of sample
 * frames is told beforehand. A file whose sizes no longer fit 32 bits becomes an RF64 file (EBU Tech 3306); more than two channels or more
 * than 16 bits are announced by the extensible format (Microsoft, "Multiple channel audio data and WAVE files").
 */
public final class WavWriter implements Closeable {
	private static final long LARGEST_RIFF = 0xFFFF_FFFFL;
	private static final int UNKNOWN_32 = 0xFFFF_FFFF;
	private static final int PCM = 1;
	private static final int EXTENSIBLE = 0xFFFE;
	/** The fixed tail of the format identifier of the extensible header. */
	private static final byte[] FORMAT_TAIL = { 0, 0, 0, 0, 0x10, 0, (byte) 0x80, 0, 0, (byte) 0xAA, 0, 0x38, (byte) 0x9B, 0x71 };
	private static final int MOST_CHANNELS = 64;
	private static final int BLOCK_BYTES = 64 * 1024;

	private final OutputStream out;
	private final SampleDepth depth;
	private final int channels;
	private final long frames;
	private final byte[] tail;
	private final byte[] block;
	private int blockFilled;
	private long written;
	private long clipped;
	private boolean closed;

	/**
	 * Writes the header.
	 *
	 * @param frames how many sample frames will follow, exactly
	 * @param cues   cue points, in the order in which they are to stand in the file
	 * @throws IllegalArgumentException if there is no such file: no channels, a sample rate of 0
	 */
	public WavWriter(OutputStream out, int sampleRate, int channels, SampleDepth depth, long frames, List<CuePoint> cues) throws IOException {
		if (channels < 1 || channels > MOST_CHANNELS) {
			throw new IllegalArgumentException("A WAV file with " + channels + " channels; expected 1 to " + MOST_CHANNELS);
		}
		if (sampleRate < 1 || frames < 0) {
			throw new IllegalArgumentException("A WAV file with " + frames + " samples at " + sampleRate + " Hz");
		}
		this.out = out;
		this.depth = depth;
		this.channels = channels;
		this.frames = frames;
		this.tail = CueChunks.bytes(cues);
		this.block = new byte[BLOCK_BYTES / 3 * 3];
		out.write(header(sampleRate));
	}

	/** Appends sample frames, the channels interleaved; what exceeds full scale is cut there and counted. */
	public void write(float[] interleaved, int offset, int count) throws IOException {
		if (written + count > frames) {
			throw new IllegalStateException("More than the announced " + frames + " sample frames");
		}
		int end = offset + count * channels;
		if (depth == SampleDepth.PCM_16) {
			write16(interleaved, offset, end);
		} else {
			write24(interleaved, offset, end);
		}
		written += count;
	}

	/** Samples that exceeded full scale so far. */
	public long clipped() {
		return clipped;
	}

	/**
	 * Ends the file and closes the stream.
	 *
	 * @throws IOException if fewer sample frames came than were announced: the file is then no good
	 */
	@Override
	public void close() throws IOException {
		if (closed) {
			return;
		}
		closed = true;
		try (OutputStream closing = out) {
			flushBlock();
			if (written != frames) {
				throw new IOException("Only " + written + " of the announced " + frames + " sample frames were written");
			}
			if (dataBytes() % 2 != 0) {
				closing.write(0);
			}
			closing.write(tail);
		}
	}

	private void write16(float[] from, int offset, int end) throws IOException {
		for (int i = offset; i < end; i++) {
			if (blockFilled > block.length - 2) {
				flushBlock();
			}
			int value = scaled(from[i], 32_768f);
			block[blockFilled] = (byte) value;
			block[blockFilled + 1] = (byte) (value >> 8);
			blockFilled += 2;
		}
	}

	private void write24(float[] from, int offset, int end) throws IOException {
		for (int i = offset; i < end; i++) {
			if (blockFilled > block.length - 3) {
				flushBlock();
			}
			int value = scaled(from[i], 8_388_608f);
			block[blockFilled] = (byte) value;
			block[blockFilled + 1] = (byte) (value >> 8);
			block[blockFilled + 2] = (byte) (value >> 16);
			blockFilled += 3;
		}
	}

	private int scaled(float sample, float full) {
		int value = Math.round(sample * full);
		if (value >= full || value < -full) {
			clipped++;
			return value < 0 ? (int) -full : (int) full - 1;
		}
		return value;
	}

	private void flushBlock() throws IOException {
		out.write(block, 0, blockFilled);
		blockFilled = 0;
	}

	private long dataBytes() {
		return Math.multiplyExact(frames, (long) channels * depth.bytes());
	}

	private byte[] header(int sampleRate) {
		long data = dataBytes();
		boolean extensible = channels > 2 || depth.bits() > 16;
		int formatSize = extensible ? 40 : 16;
		long riff = 4 + 8 + formatSize + 8 + data + data % 2 + tail.length;
		boolean large = riff > LARGEST_RIFF;
		ByteBuffer header = CueChunks.little(12 + (large ? 36 : 0) + 8 + formatSize + 8);
		header.put(CueChunks.ascii(large ? "RF64" : "RIFF")).putInt(large ? UNKNOWN_32 : (int) riff).put(CueChunks.ascii("WAVE"));
		if (large) {
			header.put(CueChunks.ascii("ds64")).putInt(28).putLong(riff + 36).putLong(data).putLong(frames).putInt(0);
		}
		header.put(CueChunks.ascii("fmt ")).putInt(formatSize).putShort((short) (extensible ? EXTENSIBLE : PCM)).putShort((short) channels)
				.putInt(sampleRate).putInt(Math.multiplyExact(sampleRate, channels * depth.bytes())).putShort((short) (channels * depth.bytes()))
				.putShort((short) depth.bits());
		if (extensible) {
			header.putShort((short) 22).putShort((short) depth.bits()).putInt(channelMask()).putShort((short) PCM).put(FORMAT_TAIL);
		}
		header.put(CueChunks.ascii("data")).putInt(large ? UNKNOWN_32 : (int) data);
		return header.array();
	}

	/** One channel is the front centre, two are front left and right; more are not loudspeakers but lines, and so have no place. */
	private int channelMask() {
		return switch (channels) {
			case 1 -> 0x4;
			case 2 -> 0x3;
			default -> 0;
		};
	}
}
