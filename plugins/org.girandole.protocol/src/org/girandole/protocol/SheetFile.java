package org.girandole.protocol;

/**
 * A whole sheet.
 *
 * @param nothing why there is none; null when there is one
 * @param fileName with extension
 * @param content in Base64
 */
public record SheetFile(String nothing, String fileName, String content) {
    /** An answer that says why there is none. */
    public static SheetFile nothing(String why) {
        return new SheetFile(why, "", "");
    }
}
