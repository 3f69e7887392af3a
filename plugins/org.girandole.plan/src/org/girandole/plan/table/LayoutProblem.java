package org.girandole.plan.table;

import org.girandole.plan.script.SourceRef;

/**
 * Something wrong with a table layout.
 *
 * @param table name of the table
 * @param message one sentence that stands alone
 * @param found what the script says
 * @param allowed what it may say
 * @param remedy what would mend it
 */
public record LayoutProblem(String table, String message, String found, String allowed, String remedy, SourceRef source) {
}
