package org.girandole.protocol;

import java.util.List;

/**
 * The sheets of a show.
 *
 * @param nothing why there are none; null when there are
 * @param stamp printed on every page
 */
public record SheetList(String uri, String nothing, String stamp, List<Entry> sheets) {
    /** An answer that says why there is none. */
    public static SheetList nothing(String uri, String why) {
        return new SheetList(uri, why, "", List.of());
    }

    /**
     * A sheet.
     *
     * @param id number of the sheet's kind and what it is for: {@code 4 A}
     * @param fileName without extension
     */
    public record Entry(String id, String fileName, String title) {
    }
}
