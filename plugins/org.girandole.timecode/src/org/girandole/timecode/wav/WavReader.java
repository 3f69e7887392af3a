package org.girandole.timecode.wav;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.channels.SeekableByteChannel;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;

/**
 * Reads a WAV file as a stream: 8, 16, 24 and 32 bits, 32 and 64 bits float, in plain and extensible headers, RIFF or RF64. A damaged file is
 * read as far as it goes, and {@link #warnings()} says what was wrong with it.
 */
public final class WavReader implements SampleSource {
	private static final int BLOCK_BYTES = 64 * 1024;

	private final SeekableByteChannel file;
	private final WavFormat format;
	private final long frames;
	private final List<String> warnings;
	private final List<CuePoint> cues;
	private final ByteBuffer block;
	private long framesLeft;
	private long notNumbers;

	private WavReader(SeekableByteChannel file) throws IOException {
		this.file = file;
		WavHeader header = WavHeader.read(file);
		this.format = header.format();
		this.frames = header.frames();
		this.warnings = header.warnings();
		this.cues = header.cues();
		this.framesLeft = frames;
		int frameBytes = format.frameBytes();
		this.block = ByteBuffer.allocate(Math.max(1, BLOCK_BYTES / frameBytes) * frameBytes).order(ByteOrder.LITTLE_ENDIAN);
		this.block.limit(0);
		file.position(header.dataAt());
	}

	/** @throws WavException if the file is no WAV file or cannot be read */
	public static WavReader open(Path path) throws IOException {
		return open(Files.newByteChannel(path));
	}

	/** Reads from a channel, which is closed with the reader, or at once if there is nothing to read. */
	public static WavReader open(SeekableByteChannel channel) throws IOException {
		try {
			return new WavReader(channel);
		} catch (IOException | RuntimeException e) {
			channel.close();
			throw e;
		}
	}

	public WavFormat format() {
		return format;
	}

	@Override
	public int sampleRate() {
		return format.sampleRate();
	}

	@Override
	public int channels() {
		return format.channels();
	}

	@Override
	public long frames() {
		return frames;
	}

	/** Cue points in the file's order; without a label of their own they have an empty one. */
	public List<CuePoint> cues() {
		return cues;
	}

	/** What is wrong with the file, in words; complete when the last sample has been read. */
	public List<String> warnings() {
		if (notNumbers == 0) {
			return warnings;
		}
		List<String> all = new ArrayList<>(warnings);
		all.add(notNumbers + " samples are not numbers and are read as silence");
		return List.copyOf(all);
	}

	@Override
	public int read(float[] interleaved, int offset, int count) throws IOException {
		int done = 0;
		while (done < count && framesLeft > 0) {
			if (!block.hasRemaining() && !fill()) {
				framesLeft = 0;
				break;
			}
			int part = Math.min(count - done, block.remaining() / format.frameBytes());
			convert(interleaved, offset + done * format.channels(), part * format.channels());
			done += part;
			framesLeft -= part;
		}
		return done == 0 && count > 0 ? -1 : done;
	}

	/** Fills the block with whole sample frames; false if the file ended early after all. */
	private boolean fill() throws IOException {
		int frameBytes = format.frameBytes();
		block.clear();
		block.limit((int) Math.min(block.capacity(), framesLeft * frameBytes));
		while (block.hasRemaining() && file.read(block) >= 0) {
			// A channel may deliver in pieces.
		}
		block.flip();
		block.limit(block.limit() / frameBytes * frameBytes);
		return block.hasRemaining();
	}

	private void convert(float[] to, int offset, int count) {
		int at = block.position();
		byte[] from = block.array();
		if (format.encoding() == WavFormat.Encoding.FLOAT) {
			convertFloats(to, offset, count, at);
		} else {
			switch (format.containerBytes()) {
				case 1 -> {
					for (int i = 0; i < count; i++) {
						to[offset + i] = ((from[at + i] & 0xFF) - 128) / 128f;
					}
				}
				case 2 -> {
					for (int i = 0; i < count; i++) {
						to[offset + i] = block.getShort(at + 2 * i) / 32_768f;
					}
				}
				case 3 -> {
					for (int i = 0; i < count; i++) {
						int p = at + 3 * i;
						to[offset + i] = (from[p] & 0xFF | (from[p + 1] & 0xFF) << 8 | from[p + 2] << 16) / 8_388_608f;
					}
				}
				default -> {
					for (int i = 0; i < count; i++) {
						to[offset + i] = block.getInt(at + 4 * i) / 2_147_483_648f;
					}
				}
			}
		}
		block.position(at + count * format.containerBytes());
	}

	private void convertFloats(float[] to, int offset, int count, int at) {
		boolean wide = format.containerBytes() == 8;
		for (int i = 0; i < count; i++) {
			float value = wide ? (float) block.getDouble(at + 8 * i) : block.getFloat(at + 4 * i);
			if (!Float.isFinite(value)) {
				notNumbers++;
				value = 0;
			}
			to[offset + i] = value;
		}
	}

	@Override
	public void close() throws IOException {
		file.close();
	}
}
