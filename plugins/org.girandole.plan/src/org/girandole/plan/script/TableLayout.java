package org.girandole.plan.script;

import java.util.List;

/**
 * A firing table in the user's own layout.
 *
 * @param file name inside the release folder
 * @param separator one character
 * @param crlf whether lines end with CR LF instead of LF
 * @param header whether the first line has the column titles
 */
public record TableLayout(String name, String file, String separator, boolean crlf, boolean header, List<Column> columns,
        SourceRef source) {
    public TableLayout {
        columns = List.copyOf(columns);
    }

    /**
     * One column.
     *
     * @param field what stands in it: an id of the field list of tables
     * @param format how it is written, such as {@code timecode}, {@code seconds}, {@code milliseconds}; empty for the field's own form
     */
    public record Column(String title, String field, String format, SourceRef source) {
    }
}
