package org.girandole.lang.ide.server;

import java.util.Arrays;
import org.eclipse.lsp4j.Position;
import org.eclipse.lsp4j.Range;
import org.girandole.plan.script.SourceRef;

/** A text with the starts of its lines, so that places are found without reading it again. */
public final class TextLines {
    private final String text;
    private final int[] starts;

    public TextLines(String text) {
        this.text = text;
        int[] found = new int[64];
        int count = 1;
        for (int i = text.indexOf('\n'); i >= 0; i = text.indexOf('\n', i + 1)) {
            if (count == found.length) {
                found = Arrays.copyOf(found, count * 2);
            }
            found[count++] = i + 1;
        }
        this.starts = Arrays.copyOf(found, count);
    }

    public String text() {
        return text;
    }

    /** Number of lines, at least 1. */
    public int count() {
        return starts.length;
    }

    /** Offset of a place; one beyond the end of its line or of the text is drawn back there. */
    public int offset(Position position) {
        if (position.getLine() < 0) {
            return 0;
        }
        if (position.getLine() >= starts.length) {
            return text.length();
        }
        int end = position.getLine() + 1 < starts.length ? starts[position.getLine() + 1] - 1 : text.length();
        return Math.min(starts[position.getLine()] + Math.max(0, position.getCharacter()), end);
    }

    /** Place of an offset; one outside of the text is drawn back into it. */
    public Position position(int offset) {
        int inside = Math.max(0, Math.min(offset, text.length()));
        int line = Arrays.binarySearch(starts, inside);
        line = line >= 0 ? line : -line - 2;
        return new Position(line, inside - starts[line]);
    }

    public Range range(int from, int to) {
        return new Range(position(from), position(to));
    }

    /** The stretch that a finding is about. */
    public Range range(SourceRef source) {
        int from = offset(new Position(source.line() - 1, source.column() - 1));
        return range(from, from + source.length());
    }

    /** A line without its end. */
    public String line(int line) {
        int end = line + 1 < starts.length ? starts[line + 1] - 1 : text.length();
        String found = text.substring(starts[line], end);
        return found.endsWith("\r") ? found.substring(0, found.length() - 1) : found;
    }
}
