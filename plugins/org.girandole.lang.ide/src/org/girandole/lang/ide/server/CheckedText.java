package org.girandole.lang.ide.server;

import java.util.Optional;

/**
 * The text of one file as it was checked.
 *
 * @param uri as the client names it
 * @param version of the client's document; empty when the file was not open
 */
public record CheckedText(String uri, Optional<Integer> version, TextLines lines) {
}
