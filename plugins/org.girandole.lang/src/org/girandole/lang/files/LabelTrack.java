package org.girandole.lang.files;

import java.io.IOException;
import java.math.BigDecimal;
import java.math.RoundingMode;
import java.nio.charset.CharacterCodingException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** Reads label tracks: text, one label a line, start and end in seconds and the label, separated by tabs. */
public final class LabelTrack {
    private static final Pattern LINE = Pattern.compile("(\\d{1,6}(?:[.,]\\d{1,9})?)\\t(\\d{1,6}(?:[.,]\\d{1,9})?)(?:\\t(.*))?");
    private static final int MOST_LABELS = 100_000;

    /** One label, by its start. */
    public record Label(String text, long us) {
    }

    /** A label track that cannot be read; the message is for the user. */
    public static final class LabelException extends IOException {
        private static final long serialVersionUID = 1L;

        LabelException(String message) {
            super(message);
        }
    }

    private LabelTrack() {
    }

    /**
     * All labels in the order of the file. Lines that give the frequencies of a label (they begin with a backslash) and empty lines
     * are passed over.
     *
     * @throws LabelException if a line is none of these
     * @throws IOException if the file cannot be read
     */
    public static List<Label> read(Path file) throws IOException {
        List<String> lines;
        try {
            lines = Files.readAllLines(file, StandardCharsets.UTF_8);
        } catch (CharacterCodingException e) {
            throw new LabelException("it is not UTF-8 text");
        }
        if (lines.size() > MOST_LABELS) {
            throw new LabelException("it has " + lines.size() + " lines; at most " + MOST_LABELS + " are read");
        }
        List<Label> labels = new ArrayList<>();
        for (int i = 0; i < lines.size(); i++) {
            String line = i == 0 && lines.get(0).startsWith("\uFEFF") ? lines.get(0).substring(1) : lines.get(i);
            if (line.isBlank() || line.startsWith("\\")) {
                continue;
            }
            Matcher m = LINE.matcher(line);
            if (!m.matches()) {
                throw new LabelException("line " + (i + 1) + " is not 'start, tab, end, tab, label' with times in seconds");
            }
            BigDecimal seconds = new BigDecimal(m.group(1).replace(',', '.'));
            labels.add(new Label(m.group(3) == null ? "" : m.group(3).strip(),
                    seconds.movePointRight(6).setScale(0, RoundingMode.HALF_UP).longValueExact()));
        }
        return labels;
    }
}
