package org.girandole.timecode.marks;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.nio.ByteBuffer;
import java.nio.charset.CharacterCodingException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

import org.girandole.timecode.TimecodeException;

/**
 * Label tracks: text, one label a line, its beginning and end in seconds and its name, separated by tabs, as audio editors exchange them. Six
 * places behind the point carry every microsecond.
 */
public final class LabelTrack {
	private static final String TIME = "(\\d{1,9}(?:[.,]\\d{1,12})?)";
	private static final Pattern LINE = Pattern.compile(TIME + "\\t" + TIME + "(?:\\t(.*))?", Pattern.DOTALL);
	private static final int MOST_BYTES = 16 << 20;

	private LabelTrack() {
	}

	/**
	 * The marks as text; each begins and ends at its moment.
	 *
	 * @throws TimecodeException if a name holds a tab or the end of a line, which would tear the table
	 */
	public static String write(List<Mark> marks) {
		StringBuilder text = new StringBuilder();
		for (Mark mark : marks) {
			if (mark.name().chars().anyMatch(c -> c == '\t' || c == '\n' || c == '\r')) {
				throw new TimecodeException("The name of the mark at " + mark.timeUs() + " us holds a tab or the end of a line, which a label track cannot hold");
			}
			String seconds = String.format(Locale.ROOT, "%d.%06d", mark.timeUs() / 1_000_000, mark.timeUs() % 1_000_000);
			text.append(seconds).append('\t').append(seconds).append('\t').append(mark.name()).append('\n');
		}
		return text.toString();
	}

	/**
	 * The marks of a label track in its order, each at the beginning of its label. Decimal commas are taken too; empty lines, and lines that give
	 * the frequencies of a label and begin with a backslash, are passed over.
	 *
	 * @throws MarksException if a line is none of these, or the text is not UTF-8
	 */
	public static List<Mark> read(byte[] utf8) throws MarksException {
		if (utf8.length > MOST_BYTES) {
			throw new MarksException("The label track has " + utf8.length + " bytes; at most " + MOST_BYTES + " are read");
		}
		String text;
		try {
			text = StandardCharsets.UTF_8.newDecoder().decode(ByteBuffer.wrap(utf8)).toString();
		} catch (CharacterCodingException e) {
			throw new MarksException("The label track is not UTF-8 text", e);
		}
		List<Mark> marks = new ArrayList<>();
		String[] lines = (text.startsWith("\uFEFF") ? text.substring(1) : text).split("\r\n|\n|\r", -1);
		for (int i = 0; i < lines.length; i++) {
			if (lines[i].isBlank() || lines[i].startsWith("\\")) {
				continue;
			}
			Matcher match = LINE.matcher(lines[i]);
			if (!match.matches()) {
				throw new MarksException("Line " + (i + 1) + " of the label track is not beginning, tab, end, tab, name, with times in seconds");
			}
			long us = new BigDecimal(match.group(1).replace(',', '.')).movePointRight(6).setScale(0, RoundingMode.HALF_UP).longValueExact();
			marks.add(new Mark(us, match.group(3) == null ? "" : match.group(3)));
		}
		return List.copyOf(marks);
	}
}
