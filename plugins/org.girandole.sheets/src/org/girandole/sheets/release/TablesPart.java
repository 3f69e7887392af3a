package org.girandole.sheets.release;

import java.io.IOException;
import java.util.List;
import org.girandole.plan.CheckedPlan;
import org.girandole.plan.Plan;
import org.girandole.plan.table.Table;
import org.girandole.plan.table.Tables;
import org.girandole.sheets.tables.CsvTables;
import org.girandole.sheets.tables.Workbooks;

/** The firing tables: a CSV each, and one workbook with all of them. */
final class TablesPart implements ReleasePart {
    @Override
    public List<String> write(CheckedPlan checked, String toolVersion, ReleaseFolder folder) throws IOException {
        Plan plan = checked.plan();
        List<Table> tables = Tables.released(plan);
        for (Table table : tables) {
            folder.writeText(table.layout().file(), out -> CsvTables.write(table, out));
        }
        String footer = plan.script().show().label() + ", stamp " + plan.stamp().printed();
        folder.write("tables.xlsx", out -> Workbooks.write(tables, footer, out));
        return List.of();
    }
}
