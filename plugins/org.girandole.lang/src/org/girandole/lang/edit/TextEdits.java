package org.girandole.lang.edit;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/** Changes to the text of scripts, gathered first and made together; everything between them stays as it is. */
public final class TextEdits {
    private final Map<Path, List<Edit>> edits = new LinkedHashMap<>();

    private record Edit(int offset, int length, String text) {
    }

    /** Puts text in the place of other text. */
    public void replace(TextPlace place, String text) {
        if (!place.text().equals(text)) {
            add(place.file(), place.offset(), place.text().length(), text);
        }
    }

    /** Puts text before the character at an offset; several at one offset come in the order in which they were added. */
    public void insert(Path file, int offset, String text) {
        add(file, offset, 0, text);
    }

    private void add(Path file, int offset, int length, String text) {
        edits.computeIfAbsent(file, f -> new ArrayList<>()).add(new Edit(offset, length, text));
    }

    /** Files that change. */
    public List<Path> files() {
        return List.copyOf(edits.keySet());
    }

    /**
     * The new text of a file.
     *
     * @throws IllegalStateException if two changes touch the same text
     */
    public String apply(Path file, String text) {
        List<Edit> ordered = new ArrayList<>(edits.getOrDefault(file, List.of()));
        ordered.sort(Comparator.comparingInt(Edit::offset));
        StringBuilder out = new StringBuilder();
        int at = 0;
        for (Edit edit : ordered) {
            if (edit.offset() < at) {
                throw new IllegalStateException("two changes touch offset " + edit.offset() + " of " + file);
            }
            out.append(text, at, edit.offset()).append(edit.text());
            at = edit.offset() + edit.length();
        }
        return out.append(text, at, text.length()).toString();
    }
}
