package org.girandole.protocol;

/**
 * A page as a picture.
 *
 * @param nothing why there is none; null when there is one
 * @param page from 1
 * @param pages how many the sheet has
 * @param png in Base64
 */
public record SheetPage(String nothing, String id, String title, int page, int pages, int widthPx, int heightPx, String png) {
    /** An answer that says why there is none. */
    public static SheetPage nothing(String id, String why) {
        return new SheetPage(why, id, "", 0, 0, 0, 0, "");
    }
}
