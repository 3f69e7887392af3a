package org.girandole.lang.files;

import java.io.IOException;
import java.io.InputStream;
import java.nio.ByteBuffer;
import java.nio.CharBuffer;
import java.nio.charset.CharsetDecoder;
import java.nio.charset.CoderResult;
import java.nio.charset.CodingErrorAction;
import java.nio.charset.StandardCharsets;
import java.util.Locale;
import java.util.Optional;
import org.girandole.lang.LanguageRules;
import org.girandole.plan.rules.RuleInfo;

/**
 * The text of a script as it was read.
 *
 * @param text empty when the file is refused
 * @param trouble what was wrong with the file
 */
public record ScriptText(String text, Optional<Trouble> trouble) {
    static final int LARGEST_BYTES = 64 << 20;
    private static final int LONGEST_LINE = 100_000;

    /** Something wrong with a file, with the place in it (line and column from 1). */
    public record Trouble(RuleInfo rule, String message, String found, String allowed, String remedy, int line, int column) {
    }

    /** Reads UTF-8 text. What is not UTF-8 is replaced and reported. Files too large or with lines too long to be scripts are refused. */
    public static ScriptText read(InputStream in) throws IOException {
        return read(in, LARGEST_BYTES);
    }

    /** As {@link #read(InputStream)}, with a limit of its own. */
    public static ScriptText read(InputStream in, int largestBytes) throws IOException {
        byte[] bytes = in.readNBytes(largestBytes + 1);
        if (bytes.length > largestBytes) {
            return refused(largestBytes == LARGEST_BYTES ? "This file is larger than a script can be" : "This file is too large to be read here",
                    "more than " + largestBytes + " bytes", "at most " + largestBytes + " bytes",
                    "split the show into several files joined by use", 1, 1);
        }
        Optional<Trouble> badBytes = notUtf8(bytes);
        String text = new String(bytes, StandardCharsets.UTF_8);
        int lineStart = 0;
        int line = 1;
        for (int i = 0; i <= text.length(); i++) {
            if (i < text.length() && text.charAt(i) != '\n') {
                continue;
            }
            if (i - lineStart > LONGEST_LINE) {
                return refused("Line " + line + " is too long to be read", (i - lineStart) + " characters",
                        "at most " + LONGEST_LINE + " characters", "check that this file is a script; if it is, break the line", line, 1);
            }
            lineStart = i + 1;
            line++;
        }
        return new ScriptText(text, badBytes);
    }

    private static ScriptText refused(String message, String found, String allowed, String remedy, int line, int column) {
        return new ScriptText("", Optional.of(new Trouble(LanguageRules.UNREADABLE, message, found, allowed, remedy, line, column)));
    }

    private static Optional<Trouble> notUtf8(byte[] bytes) {
        CharsetDecoder decoder = StandardCharsets.UTF_8.newDecoder().onMalformedInput(CodingErrorAction.REPORT)
                .onUnmappableCharacter(CodingErrorAction.REPORT);
        ByteBuffer in = ByteBuffer.wrap(bytes);
        CharBuffer out = CharBuffer.allocate(8192);
        int line = 1;
        int column = 1;
        while (true) {
            CoderResult result = decoder.decode(in, out, true);
            out.flip();
            while (out.hasRemaining()) {
                boolean lineEnd = out.get() == '\n';
                line += lineEnd ? 1 : 0;
                column = lineEnd ? 1 : column + 1;
            }
            out.clear();
            if (result.isUnderflow()) {
                return Optional.empty();
            }
            if (result.isError()) {
                String found = String.format(Locale.ROOT, "byte 0x%02X", bytes[in.position()] & 0xFF);
                return Optional.of(new Trouble(LanguageRules.NOT_UTF8, "This file is not UTF-8 text", found, "UTF-8",
                        "save the file as UTF-8", line, column));
            }
        }
    }
}
