package org.girandole.timecode.wav;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.channels.SeekableByteChannel;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/**
 * Finds the parts of a WAV file. Recorders lose power, disks fill and editors miscount: sizes are therefore held against the file itself, and
 * what disagrees becomes a warning that names the place, unless nothing can be read at all.
 */
final class WavHeader {
	private static final long UNKNOWN_32 = 0xFFFF_FFFFL;
	/** Far more chunks than any file has; a bound for files that are not what they say. */
	private static final int MOST_CHUNKS = 4096;
	/** Cue points and labels beyond this are not read. */
	private static final int MOST_CUE_BYTES = 1 << 20;
	private static final int MOST_SAMPLE_RATE = 1_536_000;

	private final SeekableByteChannel file;
	private final long fileBytes;
	private final List<String> warnings = new ArrayList<>();
	private final Map<Integer, Long> cuePlaces = new LinkedHashMap<>();
	private final Map<Integer, String> cueLabels = new LinkedHashMap<>();
	private final Map<Integer, String> cueNotes = new LinkedHashMap<>();

	private WavFormat format;
	private long dataAt = -1;
	private long dataBytes;
	private long dataBytes64 = -1;
	private boolean rf64;

	private WavHeader(SeekableByteChannel file) throws IOException {
		this.file = file;
		this.fileBytes = file.size();
	}

	static WavHeader read(SeekableByteChannel file) throws IOException {
		WavHeader header = new WavHeader(file);
		header.riff();
		header.chunks();
		header.finish();
		return header;
	}

	WavFormat format() {
		return format;
	}

	long dataAt() {
		return dataAt;
	}

	long frames() {
		return dataBytes / format.frameBytes();
	}

	List<String> warnings() {
		return List.copyOf(warnings);
	}

	List<CuePoint> cues() {
		return CueChunks.join(cuePlaces, cueLabels, cueNotes);
	}

	private void riff() throws IOException {
		if (fileBytes < 12) {
			throw new WavException("The file has " + fileBytes + " bytes; a WAV file has at least a header of 44");
		}
		ByteBuffer head = bytes(0, 12);
		String id = name(head, 0);
		if (id.equals("RIFX")) {
			throw new WavException("The file is a big-endian WAV file (RIFX), which is not read; convert it to a plain WAV file");
		}
		rf64 = id.equals("RF64") || id.equals("BW64");
		if (!rf64 && !id.equals("RIFF") || !name(head, 8).equals("WAVE")) {
			throw new WavException("The file begins with \"" + printable(id) + "\" and \"" + printable(name(head, 8))
					+ "\"; a WAV file begins with \"RIFF\" and \"WAVE\"");
		}
		long announced = unsigned(head, 4);
		if (!rf64 && announced != UNKNOWN_32 && announced != 0 && announced + 8 != fileBytes && announced + 9 != fileBytes) {
			warnings.add("The header announces a file of " + (announced + 8) + " bytes, the file has " + fileBytes);
		}
	}

	private void chunks() throws IOException {
		long at = 12;
		for (int count = 0; at + 8 <= fileBytes; count++) {
			ByteBuffer head = bytes(at, 8);
			String id = name(head, 0);
			if (!isName(id) || count == MOST_CHUNKS) {
				warnings.add("What stands at byte " + at + " is no chunk of a WAV file; the " + (fileBytes - at) + " bytes from there on are ignored");
				return;
			}
			long size = unsigned(head, 4);
			long bodyAt = at + 8;
			if (id.equals("data")) {
				size = data(bodyAt, size);
			} else {
				chunk(id, bodyAt, Math.min(size, fileBytes - bodyAt));
			}
			at = next(bodyAt, size);
		}
		if (at < fileBytes) {
			warnings.add("The file ends with " + (fileBytes - at) + " bytes that belong to no chunk");
		}
	}

	/** Chunks begin at even places; some programs forget the byte that is needed for it. */
	private long next(long bodyAt, long size) throws IOException {
		long end = bodyAt + size;
		if (size % 2 == 0) {
			return end;
		}
		if (end + 8 <= fileBytes && bytes(end, 1).get(0) != 0 && isName(name(bytes(end, 4), 0))) {
			warnings.add("The chunk before byte " + end + " has an odd size and lacks its padding byte");
			return end;
		}
		return end + 1;
	}

	private void chunk(String id, long at, long size) throws IOException {
		switch (id) {
			case "ds64" -> {
				if (rf64 && size >= 24) {
					dataBytes64 = bytes(at, 24).getLong(8);
				}
			}
			case "fmt " -> {
				if (format == null) {
					format = format(bytes(at, (int) Math.min(size, 40)));
				} else {
					warnings.add("A second format chunk at byte " + (at - 8) + " is ignored");
				}
			}
			case "cue " -> cuePlaces.putAll(CueChunks.places(cueBytes(at, size)));
			case "LIST" -> CueChunks.texts(cueBytes(at, size), cueLabels, cueNotes);
			default -> {
				// Everything else, from broadcast data to cover pictures, says nothing about the samples.
			}
		}
	}

	private ByteBuffer cueBytes(long at, long size) throws IOException {
		if (size > MOST_CUE_BYTES) {
			warnings.add("The chunk at byte " + (at - 8) + " has " + size + " bytes; only the first " + MOST_CUE_BYTES + " are read");
		}
		return bytes(at, (int) Math.min(size, MOST_CUE_BYTES));
	}

	/** Notes where the samples lie; returns the bytes that they really occupy. */
	private long data(long at, long announced) throws IOException {
		long held = fileBytes - at;
		long size = announced;
		if (rf64 && announced == UNKNOWN_32 && dataBytes64 >= 0) {
			size = dataBytes64;
		} else if (announced == UNKNOWN_32 || announced == 0 && held > 0 && !chunkFollows(at)) {
			warnings.add("The size of the audio was never filled in; everything up to the end of the file is taken for audio");
			size = held;
		}
		if (size > held || size < 0) {
			warnings.add("The file is cut off: " + size + " bytes of audio are announced at byte " + (at - 8) + ", " + held + " are there");
			size = held;
		}
		if (dataAt >= 0) {
			warnings.add("A second audio chunk at byte " + (at - 8) + " is ignored");
			return size;
		}
		dataAt = at;
		dataBytes = size;
		return size;
	}

	private boolean chunkFollows(long at) throws IOException {
		return fileBytes - at >= 8 && isName(name(bytes(at, 4), 0)) && unsigned(bytes(at, 8), 4) <= fileBytes - at - 8;
	}

	private WavFormat format(ByteBuffer chunk) throws WavException {
		if (chunk.limit() < 16) {
			throw new WavException("The format chunk has " + chunk.limit() + " bytes; expected at least 16");
		}
		int tag = chunk.getShort(0) & 0xFFFF;
		int channels = chunk.getShort(2) & 0xFFFF;
		long sampleRate = unsigned(chunk, 4);
		int blockBytes = chunk.getShort(12) & 0xFFFF;
		int bits = chunk.getShort(14) & 0xFFFF;
		int valid = bits;
		if (tag == 0xFFFE && chunk.limit() >= 40) {
			tag = chunk.getShort(24) & 0xFFFF;
			valid = chunk.getShort(18) & 0xFFFF;
		}
		if (channels == 0) {
			throw new WavException("The file has 0 channels; expected at least one");
		}
		if (sampleRate == 0 || sampleRate > MOST_SAMPLE_RATE) {
			throw new WavException("The file has a sample rate of " + sampleRate + " Hz; expected 1 to " + MOST_SAMPLE_RATE);
		}
		WavFormat.Encoding encoding = switch (tag) {
			case 1 -> WavFormat.Encoding.INTEGER;
			case 3 -> WavFormat.Encoding.FLOAT;
			default -> throw new WavException("The audio is stored as " + tagName(tag)
					+ ", which is not read; convert the file to PCM or floating-point samples");
		};
		int container = container(bits, blockBytes, channels);
		if (valid == 0 || valid > container * 8) {
			valid = Math.min(bits, container * 8);
		}
		checkWidth(encoding, container, bits);
		return new WavFormat(encoding, (int) sampleRate, channels, container, valid);
	}

	private int container(int bits, int blockBytes, int channels) {
		int needed = (bits + 7) / 8;
		if (blockBytes % channels == 0 && blockBytes / channels >= needed && blockBytes / channels <= 8) {
			return blockBytes / channels;
		}
		warnings.add("The header says " + blockBytes + " bytes for " + channels + " samples of " + bits + " bits; " + needed + " bytes a sample are assumed");
		return needed;
	}

	private static void checkWidth(WavFormat.Encoding encoding, int container, int bits) throws WavException {
		boolean fits = encoding == WavFormat.Encoding.FLOAT ? container == 4 || container == 8 : container >= 1 && container <= 4;
		if (!fits || bits == 0) {
			throw new WavException("The samples have " + bits + " bits in " + container + " bytes" + (encoding == WavFormat.Encoding.FLOAT ? ", float" : "")
					+ "; expected 8 to 32 bits, or 32 or 64 bits float");
		}
	}

	private static String tagName(int tag) {
		return switch (tag) {
			case 2, 0x11 -> "ADPCM";
			case 6 -> "A-law";
			case 7 -> "mu-law";
			case 0x50, 0x55 -> "MPEG audio";
			default -> "format " + tag;
		};
	}

	private void finish() throws WavException {
		if (format == null) {
			throw new WavException("The file has no format chunk, so that its samples cannot be understood");
		}
		if (dataAt < 0) {
			throw new WavException("The file holds no audio: there is no data chunk");
		}
		long torn = dataBytes % format.frameBytes();
		if (torn != 0) {
			warnings.add("The audio ends within a sample: the last " + torn + " bytes are ignored");
		}
	}

	private ByteBuffer bytes(long at, int size) throws IOException {
		ByteBuffer buffer = CueChunks.little(size);
		file.position(at);
		while (buffer.hasRemaining() && file.read(buffer) >= 0) {
			// A channel may deliver in pieces.
		}
		return buffer.flip();
	}

	private static String name(ByteBuffer from, int at) {
		byte[] id = new byte[Math.min(4, from.limit() - at)];
		from.get(at, id);
		return new String(id, StandardCharsets.ISO_8859_1);
	}

	private static boolean isName(String id) {
		return id.length() == 4 && id.chars().allMatch(c -> c >= 0x20 && c < 0x7F);
	}

	private static String printable(String id) {
		return id.replaceAll("[^\\x20-\\x7E]", "?");
	}

	private static long unsigned(ByteBuffer from, int at) {
		return Integer.toUnsignedLong(from.getInt(at));
	}
}
