package org.girandole.sheets.tables;

import static org.assertj.core.api.Assertions.assertThat;
import static org.girandole.sheets.SmallShow.column;
import static org.girandole.sheets.SmallShow.layout;

import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.TimeZone;
import org.apache.poi.ss.usermodel.CellType;
import org.apache.poi.ss.usermodel.Row;
import org.apache.poi.ss.usermodel.Sheet;
import org.apache.poi.xssf.usermodel.XSSFWorkbook;
import org.girandole.plan.Plan;
import org.girandole.plan.table.Table;
import org.girandole.plan.table.Tables;
import org.girandole.sheets.SmallShow;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Test;

/** Reads the workbooks back with Apache POI, which shares no code with the writer. */
class WorkbooksTest {
    private final TimeZone zone = TimeZone.getDefault();
    private final Locale locale = Locale.getDefault();

    @AfterEach
    void restore() {
        TimeZone.setDefault(zone);
        Locale.setDefault(locale);
    }

    @Test
    void valuesReadBackAsWritten() throws IOException {
        try (XSSFWorkbook workbook = open(write(tables(new SmallShow().labelled("=1+1").plan())))) {
            assertThat(workbook.getNumberOfSheets()).isEqualTo(2);
            Sheet standard = workbook.getSheet("standard");
            Row row = standard.getRow(1);
            assertThat(standard.getRow(0).getCell(2).getStringCellValue()).isEqualTo("Fire");
            assertThat(row.getCell(2).getStringCellValue()).isEqualTo("10:01:17:04");
            assertThat(row.getCell(4).getNumericCellValue()).isEqualTo(17.16);
            assertThat(row.getCell(11).getNumericCellValue()).isEqualTo(-20);
            assertThat(row.getCell(12).getStringCellValue()).isEqualTo("'=1+1");
            assertThat(standard.getPaneInformation().getHorizontalSplitPosition()).isEqualTo((short) 1);
            assertThat(standard.getRepeatingRows().getFirstRow()).isZero();
        }
    }

    @Test
    void noCellIsAFormula() throws IOException {
        try (XSSFWorkbook workbook = open(write(tables(new SmallShow().labelled("=1+1").noted("@x").plan())))) {
            workbook.forEach(sheet -> sheet.forEach(row -> row.forEach(
                    cell -> assertThat(cell.getCellType()).isNotEqualTo(CellType.FORMULA))));
        }
    }

    @Test
    void sheetNamesAreMadeFit() throws IOException {
        Plan plan = new SmallShow().plan();
        Table odd = Tables.fill(layout("a/b:c[d]".repeat(6), "a.csv", column("cue", "number", "")), plan);

        try (XSSFWorkbook workbook = open(write(List.of(odd, odd)))) {
            assertThat(workbook.getSheetName(0)).hasSizeLessThanOrEqualTo(31).doesNotContainPattern("[/:\\[\\]]");
            assertThat(workbook.getSheetName(1)).isEqualTo(workbook.getSheetName(0) + " 2");
        }
    }

    @Test
    void sameTablesGiveTheSameBytesInAnyZoneAndLocale() throws IOException {
        byte[] first = write(tables(new SmallShow().plan()));
        TimeZone.setDefault(TimeZone.getTimeZone("America/St_Johns"));
        Locale.setDefault(Locale.forLanguageTag("ar-EG"));

        assertThat(Arrays.equals(write(tables(new SmallShow().plan())), first)).as("same bytes").isTrue();
        try (XSSFWorkbook workbook = open(first)) {
            assertThat(workbook.getProperties().getCoreProperties().getCreated()).isEqualTo("1980-02-01T00:00:00Z");
        }
    }

    private static List<Table> tables(Plan plan) {
        return List.of(Tables.standard(plan), Tables.fill(layout("Desk", "desk.csv", column("cue", "number", "")), plan));
    }

    private static byte[] write(List<Table> tables) throws IOException {
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        Workbooks.write(tables, "Small show & more, stamp 0000-0000", out);
        return out.toByteArray();
    }

    private static XSSFWorkbook open(byte[] bytes) throws IOException {
        return new XSSFWorkbook(new ByteArrayInputStream(bytes));
    }
}
