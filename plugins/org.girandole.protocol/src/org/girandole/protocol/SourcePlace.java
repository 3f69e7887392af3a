package org.girandole.protocol;

/**
 * Where something is written.
 *
 * @param uri of the document
 * @param file path relative to the project, with forward slashes, for showing
 * @param line from 1
 * @param column from 1, in UTF-16 units
 * @param length in UTF-16 units, at least 1
 */
public record SourcePlace(String uri, String file, int line, int column, int length) {
    /** The form that people read: {@code file:line}. */
    public String words() {
        return file + ":" + line;
    }
}
