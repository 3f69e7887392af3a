package org.girandole.sheets.tables;

import java.io.IOException;
import java.io.Writer;
import java.util.List;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVPrinter;
import org.apache.commons.csv.QuoteMode;
import org.girandole.plan.table.Cell;
import org.girandole.plan.table.Table;

/** Writes a table as CSV (RFC 4180, with the layout's own separator and line ends). */
public final class CsvTables {
    private CsvTables() {
    }

    /** Writes the table; the writer stays open. */
    public static void write(Table table, Writer writer) throws IOException {
        CSVFormat format = CSVFormat.Builder.create()
                .setDelimiter(table.layout().separator().charAt(0))
                .setQuote('"')
                .setQuoteMode(QuoteMode.MINIMAL)
                .setRecordSeparator(table.layout().crlf() ? "\r\n" : "\n")
                .get();
        CSVPrinter printer = new CSVPrinter(writer, format);
        if (table.layout().header()) {
            printer.printRecord(table.titles().stream().map(SafeText::of).toList());
        }
        for (List<Cell> row : table.rows()) {
            printer.printRecord(row.stream().map(SafeText::of).toList());
        }
        printer.flush();
    }
}
