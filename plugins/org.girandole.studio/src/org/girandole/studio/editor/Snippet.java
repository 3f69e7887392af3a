package org.girandole.studio.editor;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import org.eclipse.jface.text.BadLocationException;
import org.eclipse.jface.text.IRegion;
import org.eclipse.jface.text.ITextViewer;
import org.eclipse.jface.text.link.LinkedModeModel;
import org.eclipse.jface.text.link.LinkedModeUI;
import org.eclipse.jface.text.link.LinkedPosition;
import org.eclipse.jface.text.link.LinkedPositionGroup;

/** A text with places to fill in: {@code $1}, {@code ${2:default}}, {@code ${3|one,two|}}, and {@code $0} for the end (LSP 3.17, snippet syntax). */
final class Snippet {
    private final StringBuilder text = new StringBuilder();
    private final Map<Integer, List<int[]>> stops = new TreeMap<>();
    private int caret = -1;

    private Snippet() {
    }

    static Snippet plain(String text) {
        Snippet snippet = new Snippet();
        snippet.text.append(text);
        return snippet;
    }

    static Snippet parse(String source, String indent) {
        Snippet snippet = new Snippet();
        snippet.read(source.replace("\n", "\n" + indent));
        return snippet;
    }

    private void read(String source) {
        int i = 0;
        while (i < source.length()) {
            char c = source.charAt(i);
            if (c == '\\' && i + 1 < source.length()) {
                text.append(source.charAt(i + 1));
                i += 2;
            } else if (c == '$' && i + 1 < source.length() && Character.isDigit(source.charAt(i + 1))) {
                int end = digits(source, i + 1);
                stop(Integer.parseInt(source.substring(i + 1, end)), "");
                i = end;
            } else if (c == '$' && i + 2 < source.length() && source.charAt(i + 1) == '{' && Character.isDigit(source.charAt(i + 2))) {
                i = placeholder(source, i);
            } else {
                text.append(c);
                i++;
            }
        }
    }

    private int placeholder(String source, int from) {
        int end = digits(source, from + 2);
        int number = Integer.parseInt(source.substring(from + 2, end));
        int close = close(source, end);
        String inside = source.substring(end, close);
        String content = "";
        if (inside.startsWith(":")) {
            content = inside.substring(1);
        } else if (inside.startsWith("|")) {
            content = inside.substring(1).split("[,|]", 2)[0];
        }
        stop(number, content.replaceAll("\\\\(.)", "$1"));
        return Math.min(source.length(), close + 1);
    }

    private static int close(String source, int from) {
        int i = from;
        while (i < source.length() && source.charAt(i) != '}') {
            i += source.charAt(i) == '\\' ? 2 : 1;
        }
        return Math.min(i, source.length());
    }

    private static int digits(String source, int from) {
        int end = from;
        while (end < source.length() && Character.isDigit(source.charAt(end))) {
            end++;
        }
        return end;
    }

    private void stop(int number, String content) {
        if (number == 0) {
            caret = text.length();
        } else {
            stops.computeIfAbsent(number, key -> new ArrayList<>()).add(new int[] {text.length(), content.length()});
        }
        text.append(content);
    }

    String text() {
        return text.toString();
    }

    int caret() {
        return caret < 0 ? text.length() : caret;
    }

    boolean hasStops() {
        return !stops.isEmpty();
    }

    /** Lets the user go from stop to stop with the tabulator; the first stop. */
    Optional<IRegion> link(ITextViewer viewer, int offset) {
        try {
            LinkedModeModel model = new LinkedModeModel();
            int sequence = 0;
            for (List<int[]> places : stops.values()) {
                LinkedPositionGroup group = new LinkedPositionGroup();
                for (int[] place : places) {
                    group.addPosition(new LinkedPosition(viewer.getDocument(), offset + place[0], place[1], sequence));
                }
                sequence++;
                model.addGroup(group);
            }
            model.forceInstall();
            LinkedModeUI keys = new LinkedModeUI(model, viewer);
            keys.setExitPosition(viewer, offset + caret(), 0, Integer.MAX_VALUE);
            keys.enter();
            return Optional.of(keys.getSelectedRegion());
        } catch (BadLocationException e) {
            // The text is there; only the jumping is not.
            return Optional.empty();
        }
    }
}
