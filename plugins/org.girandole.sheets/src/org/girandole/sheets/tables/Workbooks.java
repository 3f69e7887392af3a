package org.girandole.sheets.tables;

import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.charset.StandardCharsets;
import java.time.LocalDateTime;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.regex.Pattern;
import java.util.zip.ZipEntry;
import java.util.zip.ZipInputStream;
import java.util.zip.ZipOutputStream;
import org.dhatim.fastexcel.Position;
import org.dhatim.fastexcel.Workbook;
import org.dhatim.fastexcel.Worksheet;
import org.girandole.plan.table.Cell;
import org.girandole.plan.table.Table;

/** Writes tables as one Office Open XML workbook, a sheet a table. The same tables give the same bytes. */
public final class Workbooks {
    /** The earliest time that a zip archive can tell: the workbook must not know when it was made. */
    private static final LocalDateTime NO_TIME = LocalDateTime.of(1980, 1, 1, 0, 0);
    private static final Pattern CREATED = Pattern.compile("(?<open><dcterms:created[^>]*>)[^<]*");
    private static final Pattern NOT_IN_SHEET_NAMES = Pattern.compile("[\\\\/*?:\\[\\]\\p{Cntrl}]");
    /** The format allows 31 characters. */
    private static final int LONGEST_SHEET_NAME = 31;
    private static final int NARROWEST = 6;
    private static final int WIDEST = 48;

    private Workbooks() {
    }

    /**
     * Writes the workbook; the stream stays open.
     *
     * @param footer printed below each page
     */
    public static void write(List<Table> tables, String footer, OutputStream out) throws IOException {
        ByteArrayOutputStream bytes = new ByteArrayOutputStream();
        try (Workbook workbook = new Workbook(bytes, "Girandole", null)) {
            Set<String> names = new HashSet<>();
            for (Table table : tables) {
                Worksheet sheet = workbook.newWorksheet(sheetName(table.name(), names));
                fill(sheet, table);
                page(sheet, footer);
            }
        }
        copyWithoutTimes(bytes.toByteArray(), out);
    }

    private static void fill(Worksheet sheet, Table table) {
        List<String> titles = table.titles();
        int[] widths = new int[titles.size()];
        for (int column = 0; column < titles.size(); column++) {
            text(sheet, 0, column, SafeText.of(titles.get(column)), widths);
            sheet.style(0, column).bold().wrapText(true).verticalAlignment("top").set();
        }
        for (int row = 0; row < table.rows().size(); row++) {
            List<Cell> cells = table.rows().get(row);
            for (int column = 0; column < cells.size(); column++) {
                if (cells.get(column) instanceof Cell.Number number) {
                    sheet.value(row + 1, column, number.value());
                    widths[column] = Math.max(widths[column], number.text().length());
                } else {
                    text(sheet, row + 1, column, SafeText.of(cells.get(column)), widths);
                }
            }
        }
        for (int column = 0; column < widths.length; column++) {
            sheet.width(column, Math.min(WIDEST, Math.max(NARROWEST, widths[column] + 2)));
        }
        sheet.freezePane(0, 1);
        sheet.repeatRows(0);
    }

    private static void text(Worksheet sheet, int row, int column, String text, int[] widths) {
        if (!text.isEmpty()) {
            sheet.value(row, column, text);
            widths[column] = Math.max(widths[column], text.length());
        }
    }

    private static void page(Worksheet sheet, String footer) {
        sheet.pageOrientation("landscape");
        sheet.setFitToPage(true);
        sheet.fitToWidth((short) 1);
        sheet.fitToHeight((short) 0);
        // An ampersand begins a code in a footer; two of them are one ampersand.
        sheet.footer(footer.replace("&", "&&"), Position.LEFT);
        sheet.footer("&P / &N", Position.RIGHT);
    }

    private static String sheetName(String name, Set<String> taken) {
        String clean = NOT_IN_SHEET_NAMES.matcher(name).replaceAll(" ").replaceAll("^'+|'+$", "").strip();
        String base = clean.isEmpty() ? "table" : clean.substring(0, Math.min(LONGEST_SHEET_NAME - 3, clean.length()));
        String candidate = base;
        for (int i = 2; !taken.add(candidate.toLowerCase(Locale.ROOT)); i++) {
            candidate = base + " " + i;
        }
        return candidate;
    }

    private static void copyWithoutTimes(byte[] workbook, OutputStream out) throws IOException {
        SortedMap<String, byte[]> parts = new TreeMap<>();
        try (ZipInputStream zip = new ZipInputStream(new ByteArrayInputStream(workbook))) {
            for (ZipEntry entry = zip.getNextEntry(); entry != null; entry = zip.getNextEntry()) {
                parts.put(entry.getName(), zip.readAllBytes());
            }
        }
        ZipOutputStream zip = new ZipOutputStream(out, StandardCharsets.UTF_8);
        // Some readers look for the list of content types first.
        part(zip, "[Content_Types].xml", parts.remove("[Content_Types].xml"));
        for (var part : parts.entrySet()) {
            byte[] content = part.getKey().equals("docProps/core.xml") ? withoutDate(part.getValue()) : part.getValue();
            part(zip, part.getKey(), content);
        }
        zip.finish();
    }

    private static byte[] withoutDate(byte[] core) {
        String xml = new String(core, StandardCharsets.UTF_8);
        return CREATED.matcher(xml).replaceAll("${open}1980-01-01T00:00:00Z").getBytes(StandardCharsets.UTF_8);
    }

    private static void part(ZipOutputStream zip, String name, byte[] content) throws IOException {
        ZipEntry entry = new ZipEntry(name);
        entry.setTimeLocal(NO_TIME);
        zip.putNextEntry(entry);
        zip.write(content);
        zip.closeEntry();
    }
}
