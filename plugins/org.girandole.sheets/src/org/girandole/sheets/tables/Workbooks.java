package org.girandole.sheets.tables;

import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDateTime;
import java.util.Comparator;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import java.util.regex.Pattern;
import java.util.zip.ZipEntry;
import java.util.zip.ZipFile;
import java.util.zip.ZipOutputStream;
import org.dhatim.fastexcel.Position;
import org.dhatim.fastexcel.Workbook;
import org.dhatim.fastexcel.Worksheet;
import org.girandole.plan.table.Cell;
import org.girandole.plan.table.Table;

/** Writes tables as one Office Open XML workbook, a sheet a table. The same tables give the same bytes. */
public final class Workbooks {
    /**
     * The workbook must not know when it was made. The very first moment that an archive can tell, a month earlier, stands for "before
     * that", which {@link ZipOutputStream} writes out in the default time zone.
     */
    private static final LocalDateTime NO_TIME = LocalDateTime.of(1980, 2, 1, 0, 0);
    private static final Pattern CREATED = Pattern.compile("(?<open><dcterms:created[^>]*>)[^<]*");
    private static final Pattern NOT_IN_SHEET_NAMES = Pattern.compile("[\\\\/*?:\\[\\]\\p{Cntrl}]");
    /** The format allows 31 characters. */
    private static final int LONGEST_SHEET_NAME = 31;
    /** Some readers look for the list of content types first. */
    private static final Comparator<String> CONTENT_TYPES_FIRST = Comparator
            .comparing((String name) -> !name.equals("[Content_Types].xml")).thenComparing(Comparator.naturalOrder());
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
        // The writer's archive can only be read back from a file: it tells the sizes of its entries at the end.
        Path draft = Files.createTempFile("girandole-", ".xlsx");
        try {
            try (Workbook workbook = new Workbook(Files.newOutputStream(draft), "Girandole", null)) {
                Set<String> names = new HashSet<>();
                for (Table table : tables) {
                    Worksheet sheet = workbook.newWorksheet(sheetName(table.name(), names));
                    fill(sheet, table);
                    page(sheet, footer);
                }
            }
            copyWithoutTimes(draft, out);
        } finally {
            Files.deleteIfExists(draft);
        }
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

    private static void copyWithoutTimes(Path workbook, OutputStream out) throws IOException {
        try (ZipFile archive = new ZipFile(workbook.toFile(), StandardCharsets.UTF_8)) {
            List<String> names = archive.stream().map(ZipEntry::getName).sorted(CONTENT_TYPES_FIRST).toList();
            ZipOutputStream zip = new ZipOutputStream(out, StandardCharsets.UTF_8);
            for (String name : names) {
                byte[] content;
                try (InputStream in = archive.getInputStream(archive.getEntry(name))) {
                    content = in.readAllBytes();
                }
                part(zip, name, name.equals("docProps/core.xml") ? withoutDate(content) : content);
            }
            zip.finish();
        }
    }

    private static byte[] withoutDate(byte[] core) {
        String xml = new String(core, StandardCharsets.UTF_8);
        return CREATED.matcher(xml).replaceAll("${open}1980-02-01T00:00:00Z").getBytes(StandardCharsets.UTF_8);
    }

    private static void part(ZipOutputStream zip, String name, byte[] content) throws IOException {
        ZipEntry entry = new ZipEntry(name);
        entry.setTimeLocal(NO_TIME);
        zip.putNextEntry(entry);
        zip.write(content);
        zip.closeEntry();
    }
}
