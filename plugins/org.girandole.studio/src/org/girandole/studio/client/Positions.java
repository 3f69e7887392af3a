package org.girandole.studio.client;

import java.util.Optional;
import org.eclipse.jface.text.BadLocationException;
import org.eclipse.jface.text.IDocument;
import org.eclipse.jface.text.IRegion;
import org.eclipse.jface.text.Region;
import org.eclipse.lsp4j.Position;
import org.eclipse.lsp4j.Range;

/** Offsets of documents and positions of the protocol; both count UTF-16 units. */
public final class Positions {
    private Positions() {
    }

    /** The offset of a position; that of the nearest place that exists, when it does not. */
    public static int offset(IDocument document, Position position) {
        try {
            if (position.getLine() >= document.getNumberOfLines()) {
                return document.getLength();
            }
            int line = Math.max(0, position.getLine());
            IRegion region = document.getLineInformation(line);
            return region.getOffset() + Math.max(0, Math.min(position.getCharacter(), region.getLength()));
        } catch (BadLocationException e) {
            return document.getLength();
        }
    }

    public static Position position(IDocument document, int offset) {
        try {
            int inside = Math.max(0, Math.min(offset, document.getLength()));
            int line = document.getLineOfOffset(inside);
            return new Position(line, inside - document.getLineOffset(line));
        } catch (BadLocationException e) {
            return new Position(0, 0);
        }
    }

    public static IRegion region(IDocument document, Range range) {
        int from = offset(document, range.getStart());
        return new Region(from, Math.max(0, offset(document, range.getEnd()) - from));
    }

    public static Range range(IDocument document, int offset, int length) {
        return new Range(position(document, offset), position(document, offset + length));
    }

    /** The name around an offset: letters, digits and underscores. */
    public static Optional<IRegion> word(IDocument document, int offset) {
        try {
            int from = offset;
            while (from > 0 && part(document.getChar(from - 1))) {
                from--;
            }
            int to = offset;
            while (to < document.getLength() && part(document.getChar(to))) {
                to++;
            }
            return to > from ? Optional.of(new Region(from, to - from)) : Optional.empty();
        } catch (BadLocationException e) {
            return Optional.empty();
        }
    }

    /** What is written there; nothing when there is no such place. */
    public static String text(IDocument document, IRegion region) {
        try {
            return document.get(region.getOffset(), region.getLength());
        } catch (BadLocationException e) {
            return "";
        }
    }

    private static boolean part(char c) {
        return Character.isLetterOrDigit(c) || c == '_';
    }
}
