package org.girandole.sheets.print.html;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.stream.Collectors;

/** The two ways in which words of the show get into a document without becoming part of its structure. */
public final class Html {
	private static final int LONGEST_WORD = 16;

	private Html() {
	}

	/** Text between tags or in a double-quoted attribute. What XML cannot carry becomes the replacement character. */
	public static String text(Object value) {
		StringBuilder out = new StringBuilder();
		String.valueOf(value).codePoints().forEach(c -> {
			switch (c) {
				case '&' -> out.append("&amp;");
				case '<' -> out.append("&lt;");
				case '>' -> out.append("&gt;");
				case '"' -> out.append("&quot;");
				default -> out.appendCodePoint(allowed(c) ? c : 0xFFFD);
			}
		});
		return out.toString();
	}

	/** A string of a style sheet, with its quotes. Everything but letters, digits and spaces is written as an escape. */
	static String css(String value) {
		StringBuilder out = new StringBuilder("\"");
		value.codePoints().forEach(c -> {
			if (Character.isLetterOrDigit(c) || c == ' ') {
				out.appendCodePoint(c);
			} else {
				out.append('\\').append(Integer.toHexString(allowed(c) ? c : 0xFFFD)).append(' ');
			}
		});
		return out.append('"').toString();
	}

	/** The words, cut to so many characters; a single word that could not be broken between lines is cut sooner. */
	static String brief(String words, int most) {
		return cut(Arrays.stream(words.split(" ")).map(word -> cut(word, LONGEST_WORD)).collect(Collectors.joining(" ")), most);
	}

	private static String cut(String words, int most) {
		if (words.codePointCount(0, words.length()) <= most) {
			return words;
		}
		return words.substring(0, words.offsetByCodePoints(0, most - 1)) + "…";
	}

	/** The style sheet that all sheets share. */
	static String styles() {
		try (InputStream in = Html.class.getResourceAsStream("sheet.css")) {
			return new String(in.readAllBytes(), StandardCharsets.UTF_8);
		} catch (IOException e) {
			throw new UncheckedIOException("the bundle's own style sheet cannot be read", e);
		}
	}

	private static boolean allowed(int c) {
		return c == '\t' || c == '\n' || c == '\r' || c >= 0x20 && c <= 0xD7FF || c >= 0xE000 && c <= 0xFFFD || c >= 0x10000;
	}
}
