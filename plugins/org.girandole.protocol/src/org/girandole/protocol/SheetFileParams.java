package org.girandole.protocol;

/**
 * @param uri of the script's document
 * @param id of the sheet
 * @param format {@code pdf} or {@code html}
 */
public record SheetFileParams(String uri, String id, String format) {
}
