package org.girandole.lang.edit;

import java.nio.file.Path;

/**
 * A stretch of a script.
 *
 * @param offset characters (UTF-16) from the beginning of the file
 * @param text   what stands there
 * @param line   of its beginning, from 1
 */
public record TextPlace(Path file, int offset, String text, int line) {
    public int end() {
        return offset + text.length();
    }
}
