package org.girandole.plan.table;

import java.util.List;
import org.girandole.plan.script.TableLayout;

/**
 * A firing table, filled: one row an igniter, in firing order.
 *
 * @param layout file name, separator, line ends and titles
 * @param rows each as long as the layout has columns
 */
public record Table(TableLayout layout, List<List<Cell>> rows) {
    public Table {
        rows = rows.stream().map(List::copyOf).toList();
    }

    public String name() {
        return layout.name();
    }

    /** The titles of the columns. */
    public List<String> titles() {
        return layout.columns().stream().map(TableLayout.Column::title).toList();
    }
}
