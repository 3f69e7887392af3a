package org.girandole.timecode.wav;

import java.io.ByteArrayOutputStream;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/**
 * The two chunks that hold cue points: {@code cue } with their places and {@code LIST}/{@code adtl} with their labels ({@code labl}) and notes
 * ({@code note}) (Microsoft Multimedia Programming Interface and Data Specifications 1.0). Places are sample frames; texts are UTF-8.
 */
final class CueChunks {
	private static final int CUE_BYTES = 24;

	private CueChunks() {
	}

	/** Both chunks, ready to be appended; nothing for no cue points. */
	static byte[] bytes(List<CuePoint> cues) {
		if (cues.isEmpty()) {
			return new byte[0];
		}
		ByteArrayOutputStream labels = new ByteArrayOutputStream();
		ByteBuffer places = little(12 + CUE_BYTES * cues.size());
		places.put(ascii("cue ")).putInt(4 + CUE_BYTES * cues.size()).putInt(cues.size());
		for (int i = 0; i < cues.size(); i++) {
			CuePoint cue = cues.get(i);
			places.putInt(i + 1).putInt((int) cue.frame()).put(ascii("data")).putInt(0).putInt(0).putInt((int) cue.frame());
			labels.writeBytes(text("labl", i + 1, cue.label()));
		}
		for (int i = 0; i < cues.size(); i++) {
			if (!cues.get(i).note().isEmpty()) {
				labels.writeBytes(text("note", i + 1, cues.get(i).note()));
			}
		}
		ByteBuffer all = little(places.capacity() + 12 + labels.size());
		all.put(places.array()).put(ascii("LIST")).putInt(4 + labels.size()).put(ascii("adtl")).put(labels.toByteArray());
		return all.array();
	}

	private static byte[] text(String id, int name, String text) {
		byte[] utf8 = text.getBytes(StandardCharsets.UTF_8);
		int size = 4 + utf8.length + 1;
		ByteBuffer chunk = little(8 + size + size % 2);
		chunk.put(ascii(id)).putInt(size).putInt(name).put(utf8);
		return chunk.array();
	}

	/** Place of each cue point by its name, in the file's order; a count beyond the chunk's end is cut there. */
	static Map<Integer, Long> places(ByteBuffer chunk) {
		Map<Integer, Long> places = new LinkedHashMap<>();
		if (chunk.remaining() < 4) {
			return places;
		}
		long count = Integer.toUnsignedLong(chunk.getInt());
		for (long i = 0; i < count && chunk.remaining() >= CUE_BYTES; i++) {
			int at = chunk.position();
			places.put(chunk.getInt(at), Integer.toUnsignedLong(chunk.getInt(at + 20)));
			chunk.position(at + CUE_BYTES);
		}
		return places;
	}

	/** Adds the labels and notes of a {@code LIST} chunk by the name of their cue point; other lists add nothing. */
	static void texts(ByteBuffer list, Map<Integer, String> labels, Map<Integer, String> notes) {
		if (list.remaining() < 4 || !name(list).equals("adtl")) {
			return;
		}
		while (list.remaining() >= 8) {
			String id = name(list);
			long size = Integer.toUnsignedLong(list.getInt());
			int held = (int) Math.min(size, list.remaining());
			int next = (int) Math.min(list.limit(), list.position() + held + size % 2);
			if ((id.equals("labl") || id.equals("note")) && held >= 4) {
				int cue = list.getInt();
				byte[] text = new byte[held - 4];
				list.get(text);
				(id.equals("labl") ? labels : notes).put(cue, upToNull(text));
			}
			list.position(next);
		}
	}

	static List<CuePoint> join(Map<Integer, Long> places, Map<Integer, String> labels, Map<Integer, String> notes) {
		List<CuePoint> cues = new ArrayList<>();
		places.forEach((name, frame) -> cues.add(new CuePoint(frame, labels.getOrDefault(name, ""), notes.getOrDefault(name, ""))));
		return List.copyOf(cues);
	}

	private static String upToNull(byte[] text) {
		int length = 0;
		while (length < text.length && text[length] != 0) {
			length++;
		}
		return new String(text, 0, length, StandardCharsets.UTF_8);
	}

	private static String name(ByteBuffer from) {
		byte[] id = new byte[4];
		from.get(id);
		return new String(id, StandardCharsets.ISO_8859_1);
	}

	static ByteBuffer little(int size) {
		return ByteBuffer.allocate(size).order(ByteOrder.LITTLE_ENDIAN);
	}

	static byte[] ascii(String text) {
		return text.getBytes(StandardCharsets.US_ASCII);
	}
}
