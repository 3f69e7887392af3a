package org.girandole.sheets.tables;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.girandole.sheets.SmallShow.column;
import static org.girandole.sheets.SmallShow.layout;

import java.io.IOException;
import java.io.StringReader;
import java.io.StringWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVRecord;
import org.girandole.plan.script.ReleaseSpec;
import org.girandole.plan.script.TableLayout;
import org.girandole.plan.table.Cell;
import org.girandole.plan.table.LayoutCheck;
import org.girandole.plan.table.Table;
import org.girandole.plan.table.TableException;
import org.girandole.plan.table.TableField;
import org.girandole.plan.table.TableFormat;
import org.girandole.plan.table.Tables;
import org.girandole.sheets.SmallShow;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class TablesTest {
    /** The values of the hand-made show, each worked out on paper: see {@link SmallShow}. */
    @ParameterizedTest
    @CsvSource(delimiter = '|', value = {
        "fire | | 10:01:17:04 | 10:01:27:12",
        "fire | timecode | 10:01:17:04 | 10:01:27:12",
        "fire | seconds | 17.160 | 27.500",
        "fire | milliseconds | 17160 | 27500",
        "fire | clock | 0:17.160 | 0:27.500",
        // 77.16 s and 87.5 s into the line at 25 frames a second: 1929 and 2187.5 frames.
        "fire | frames | 1929 | 2187",
        "remainder | | 0 | 20",
        "seen | clock | 0:19.565 | 0:30.000",
        "seen | | 0:19.565 | 0:30.000",
        // 79.565 s: frame 1989.125 of the line.
        "seen | timecode | 10:01:19:14 | 10:01:30:00",
        "rise | | 2.400 | 2.500",
        "rise | milliseconds | 2400 | 2500",
        "latency | milliseconds | 5 | 5",
        // rise 150 ms, half a step 5 ms, chain 40 ms
        "tolerance | milliseconds | 155 | 195",
        "calibre | | 75 | 75",
        // 75 / 25.4
        "calibre | inches | 2.95 | 2.95",
        "charge | | 62 | 186",
        "charge | kilograms | 0.062 | 0.186",
        "tilt | | -20 | 0",
        "module | | M1 | ''",
        "address | | 01 | ''",
        "pin | | 7 | ''",
        "rack | | R1 | ''",
        "tube | | 3 | ''",
        "effect | | RedPeony75 | PeonyRun",
        "effect label | | Red peony | Run of three",
        "pieces | | 1 | 3",
        "ohms | | 4.13 | ''",
        "amperes | | 4.51 | ''",
        "rise source | | catalogue | catalogue",
        "mode | | seen | seen",
        "number | | 1 | 2",
        "name | | Hero | ''",
        "lot | | L118 | ''",
        "source | | small.show:41:5 | small.show:41:5"})
    void fieldsAreWrittenAsTheFormatSays(String field, String format, String first, String second) {
        Table table = Tables.fill(layout("T", "t.csv", column("x", field, format == null ? "" : format)), new SmallShow().plan());

        assertThat(table.rows().stream().map(row -> row.get(0).text())).containsExactly(first, second);
    }

    @Test
    void standardTableReadsBackWithALibrary() throws IOException {
        List<CSVRecord> records = read(csv(Tables.standard(new SmallShow().noted("the \"big\" one, at last").plan())), ',');

        assertThat(records).hasSize(2);
        assertThat(records.get(0).toMap())
                .containsEntry("Slot", "0")
                .containsEntry("Fire", "10:01:17:04")
                .containsEntry("Fire from first note (s)", "17.160")
                .containsEntry("Module", "M1")
                .containsEntry("Pin", "7")
                .containsEntry("Tilt (deg)", "-20")
                .containsEntry("Note", "the \"big\" one, at last");
        assertThat(records.get(1).get("Into frame (ms)")).isEqualTo("20");
    }

    @Test
    void layoutDecidesSeparatorLineEndAndHeader() throws IOException {
        TableLayout semicolons = new TableLayout("T", "t.csv", ";", false, false,
                List.of(column("cue", "number", ""), column("fire", "fire", "timecode")), SmallShow.HERE);

        assertThat(csv(Tables.fill(semicolons, new SmallShow().plan()))).isEqualTo("1;10:01:17:04\n2;10:01:27:12\n");
    }

    @Test
    void linesEndWithCarriageReturnWhenAskedFor() throws IOException {
        assertThat(csv(Tables.fill(layout("T", "t.csv", column("cue", "number", "")), new SmallShow().plan())))
                .isEqualTo("cue\r\n1\r\n2\r\n");
    }

    /** The first characters that make spreadsheets run a cell, as listed by the OWASP page "CSV Injection". */
    @ParameterizedTest
    @ValueSource(strings = {"=1+1", "+1+1", "-1+1", "@SUM(1)", "\t=1", "\r=1", " =1", "\uFF1D1+1", "-20+cmd", "red;=1+1", "red,=1+1",
        "red\n=1", "\"=1\"", "'=1"})
    void wordsThatASpreadsheetWouldRunAreNeutralised(String label) throws IOException {
        Table table = Tables.fill(layout("T", "t.csv", column("what", "effect label", "")), new SmallShow().labelled(label).plan());

        for (char separator : ",;\t".toCharArray()) {
            for (CSVRecord row : read(csv(table), separator)) {
                for (String cell : row) {
                    assertThat(cell.strip()).doesNotMatch("(?s)[\"\\s]*[=+\\-@\t\r\uFF1D].*");
                }
            }
        }
    }

    @ParameterizedTest
    @ValueSource(strings = {"-20", "+20", "-20.5", "Red - blue", "a=b", "1+1", "Red peony"})
    void numbersAndHarmlessWordsStayAsTheyAre(String label) throws IOException {
        Table table = Tables.fill(layout("T", "t.csv", column("what", "effect label", "")), new SmallShow().labelled(label).plan());

        assertThat(read(csv(table), ',').get(0).get("what")).isEqualTo(label);
    }

    @Test
    void titlesAreNeutralisedToo() throws IOException {
        assertThat(csv(Tables.fill(layout("T", "t.csv", column("=cmd", "number", "")), new SmallShow().plan()))).startsWith("'=cmd\r\n");
    }

    @Test
    void unknownFieldIsAClearError() {
        assertThatThrownBy(() -> Tables.fill(layout("Desk", "t.csv", column("t", "fuse", "")), new SmallShow().plan()))
                .isInstanceOf(TableException.class)
                .hasMessageContaining("small.show:41:5").hasMessageContaining("'t' of table 'Desk'").hasMessageContaining("'fuse'")
                .hasMessageContaining("one of number, key");
    }

    @Test
    void aTableThatTheReleaseNamesMustExist() {
        SmallShow show = new SmallShow().release(new ReleaseSpec(List.of(), List.of("Desk"), "A4", Optional.empty(), List.of(), List.of(), SmallShow.HERE));

        assertThatThrownBy(() -> Tables.released(show.plan())).isInstanceOf(TableException.class).hasMessageContaining("'Desk'");
    }

    @Test
    void withoutAReleaseBlockEveryTableIsReleased() {
        assertThat(Tables.released(new SmallShow().tables(layout("Desk", "desk.csv", column("cue", "number", ""))).plan()))
                .extracting(Table::name).containsExactly("standard", "Desk");
    }

    @ParameterizedTest
    @ValueSource(strings = {"../evil.csv", "/etc/evil.csv", "a/b.csv", "a\\b.csv", "", ".", "..", ".hidden", "con.csv", "NUL", "x.",
        "a\nb.csv", "release.json", "Plan.json", "sheets"})
    void fileNamesStayInsideTheReleaseAndOverwriteNothing(String file) {
        assertThat(LayoutCheck.problems(List.of(layout("T", file, column("cue", "number", ""))))).hasSize(1)
                .allSatisfy(problem -> assertThat(problem.message()).contains("'T'"));
    }

    @ParameterizedTest
    @ValueSource(strings = {"controller.csv", "Steuerung Süd.csv", "a-b_c.txt", "noextension"})
    void ordinaryFileNamesPass(String file) {
        assertThat(LayoutCheck.problems(List.of(layout("T", file, column("cue", "number", ""))))).isEmpty();
    }

    @Test
    void everyOtherMistakeOfALayoutIsFound() {
        TableLayout bad = new TableLayout("T", "t.csv", ";;", true, true,
                List.of(column("a", "fire", "inches"), column("b", "pin", "seconds")), SmallShow.HERE);
        TableLayout empty = layout("E", "T.CSV");

        assertThat(LayoutCheck.problems(List.of(bad, empty))).extracting(p -> p.message().replaceAll(".*?(needs one|cannot be written$"
                + "|only one way|no columns|both be written).*", "$1"))
                .containsExactly("needs one", "cannot be written", "only one way", "no columns", "both be written");
    }

    @Test
    void documentationNamesEveryFieldAndFormat() throws IOException {
        String page = Files.readString(Path.of("../../docs/tables.md"));

        assertThat(page).contains(Arrays.stream(TableField.values())
                .map(f -> "| `" + f.id() + "` | " + f.meaning() + " |").toArray(String[]::new));
        assertThat(page).contains(Arrays.stream(TableFormat.values())
                .map(f -> "| `" + f.id() + "` | " + f.meaning() + " |").toArray(String[]::new));
    }

    @Test
    void cellsTellNumbersFromWords() {
        Table table = Tables.fill(layout("T", "t.csv", column("t", "tilt", ""), column("a", "address", "")), new SmallShow().plan());

        assertThat(table.rows().get(0).get(0)).isInstanceOf(Cell.Number.class);
        assertThat(table.rows().get(0).get(1)).isEqualTo(new Cell.Text("01"));
        assertThat(table.rows().get(1).get(1)).isEqualTo(Cell.EMPTY);
    }

    private static String csv(Table table) throws IOException {
        StringWriter text = new StringWriter();
        CsvTables.write(table, text);
        return text.toString();
    }

    private static List<CSVRecord> read(String csv, char separator) throws IOException {
        return CSVFormat.Builder.create().setDelimiter(separator).setQuote('"').setHeader().setSkipHeaderRecord(true)
                .setAllowMissingColumnNames(true).setLenientEof(true).setTrailingData(true).get()
                .parse(new StringReader(csv)).getRecords();
    }
}
