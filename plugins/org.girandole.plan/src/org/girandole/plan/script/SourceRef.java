package org.girandole.plan.script;

/**
 * Where something is written in a script.
 *
 * @param file path relative to the project root, with forward slashes
 * @param line from 1
 * @param column from 1, in UTF-16 units
 * @param length in UTF-16 units, at least 1
 */
public record SourceRef(String file, int line, int column, int length) implements Comparable<SourceRef> {
    @Override
    public int compareTo(SourceRef other) {
        int byFile = file.compareTo(other.file);
        if (byFile != 0) {
            return byFile;
        }
        int byLine = Integer.compare(line, other.line);
        return byLine != 0 ? byLine : Integer.compare(column, other.column);
    }

    /** The form that terminals and editors make clickable: {@code file:line:column}. */
    @Override
    public String toString() {
        return file + ":" + line + ":" + column;
    }
}
