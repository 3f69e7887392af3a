package org.girandole.lang.formatting2;

import org.eclipse.xtext.formatting2.regionaccess.IComment;
import org.eclipse.xtext.formatting2.regionaccess.IHiddenRegion;
import org.eclipse.xtext.formatting2.regionaccess.IHiddenRegionPart;
import org.eclipse.xtext.formatting2.regionaccess.ISemanticRegion;
import org.girandole.lang.formatting2.Layout.Kind;
import org.girandole.lang.formatting2.Layout.Start;

/** What stands between two tokens: space, line ends, and the author's comments. Asked for one gap after the other. */
final class Gaps {
    private static final int MORE = 2 * Layout.INDENT;

    private final Layout layout;
    /** Indentation of the line that is being written. */
    private int indent;

    Gaps(Layout layout) {
        this.layout = layout;
    }

    String text(IHiddenRegion gap) {
        ISemanticRegion before = gap.getPreviousSemanticRegion();
        ISemanticRegion after = gap.getNextSemanticRegion();
        Start start = after == null ? null : layout.start(after);
        boolean breaks = after != null && layout.beginsLine(after);
        int nextIndent = after == null ? 0 : start != null ? start.indent() : indent + MORE;
        boolean closes = start != null && start.kind() == Kind.CLOSE;
        StringBuilder text = new StringBuilder();
        int lineEnds = 0;
        boolean commented = false;
        for (IHiddenRegionPart part : gap.getParts()) {
            if (!(part instanceof IComment comment)) {
                lineEnds += lineEnds(part.getText());
                continue;
            }
            boolean behind = before != null && !commented && lineEnds == 0;
            if (behind || commented && lineEnds == 0) {
                text.append(behind && isLine(comment) ? "  " : " ");
            } else if (before != null || commented) {
                text.append(newLine(lineEnds, opens(before) && !commented, closes ? nextIndent + Layout.INDENT : nextIndent));
            }
            text.append(comment.getText().stripTrailing());
            commented = true;
            lineEnds = isLine(comment) ? lineEnds(comment.getText()) : 0;
        }
        if (after == null) {
            return text + (before == null && !commented ? "" : "\n");
        }
        if (breaks) {
            boolean atBrace = closes || !commented && opens(before);
            text.append(before == null && !commented ? "" : newLine(lineEnds, atBrace, nextIndent));
            indent = start == null || start.kind() == Kind.MORE ? indent : nextIndent;
        } else if (before != null) {
            text.append(" ".repeat(commented ? 1 : inLine(before, after, start)));
        } else {
            text.append(commented ? " " : "");
        }
        return text.toString();
    }

    private int inLine(ISemanticRegion before, ISemanticRegion after, Start start) {
        boolean another = start != null && (start.kind() == Kind.FIELD || start.kind() == Kind.LINE) && !start.first();
        return another ? 2 : layout.spaces(before, after);
    }

    private static boolean opens(ISemanticRegion before) {
        return before != null && before.getText().equals("{");
    }

    /** A line end, with an empty line before it when the author left one and it is not beside a brace. */
    private static String newLine(int lineEnds, boolean atBrace, int indent) {
        return (lineEnds > 1 && !atBrace ? "\n\n" : "\n") + " ".repeat(indent);
    }

    private static boolean isLine(IComment comment) {
        return comment.getText().startsWith("//");
    }

    private static int lineEnds(String text) {
        return (int) text.chars().filter(c -> c == '\n').count();
    }
}
