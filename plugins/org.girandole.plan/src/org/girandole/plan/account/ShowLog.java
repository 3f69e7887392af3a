package org.girandole.plan.account;

import java.io.IOException;
import java.io.StringReader;
import java.io.UncheckedIOException;
import java.time.DateTimeException;
import java.time.LocalTime;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVParser;
import org.apache.commons.csv.CSVRecord;

/**
 * Reads what the crew wrote down: a line of titles and then rows of cue, outcome, time, note and where, in this order, separated by commas,
 * semicolons or tabs (RFC 4180). Time ({@code 22:34} or {@code 22:34:10}), note and where may be empty or left off at the end; where is not read.
 * A row without an outcome is passed over, so that a list of all cues can be filled in as the crew walks.
 */
public final class ShowLog {
    /** The titles of the columns; the last is for whoever fills the log in and is not read. */
    public static final List<String> TITLES = List.of("cue", "outcome", "time", "note", "where");

    private ShowLog() {
    }

    /** The rows of a log, in their order. @throws LogException naming the first line that makes no sense */
    public static List<LogEntry> parse(String text) throws LogException {
        String plain = text.startsWith("\uFEFF") ? text.substring(1) : text;
        CSVFormat format = CSVFormat.RFC4180.builder().setDelimiter(separator(plain)).setIgnoreEmptyLines(true).setTrim(true).get();
        List<LogEntry> entries = new ArrayList<>();
        Map<String, Long> lines = new HashMap<>();
        try (CSVParser parser = CSVParser.parse(new StringReader(plain), format)) {
            for (CSVRecord row : parser) {
                long line = parser.getCurrentLineNumber();
                if (row.getRecordNumber() == 1) {
                    titles(row, line);
                } else if (row.size() > 1 && !row.get(1).isEmpty()) {
                    LogEntry entry = entry(row, line);
                    Long other = lines.putIfAbsent(entry.cue(), line);
                    if (other != null) {
                        throw new LogException(line, entry.cue(), "each cue once; it is in line " + other + " too");
                    }
                    entries.add(entry);
                }
            }
        } catch (UncheckedIOException | IOException e) {
            throw new LogException("quotation marks do not close; expected rows of cue, outcome, time, note");
        }
        return List.copyOf(entries);
    }

    private static char separator(String text) {
        String first = text.lines().filter(line -> !line.isBlank()).findFirst().orElse("");
        return first.indexOf(';') >= 0 ? ';' : first.indexOf('\t') >= 0 ? '\t' : ',';
    }

    private static void titles(CSVRecord row, long line) throws LogException {
        List<String> there = row.stream().map(title -> title.toLowerCase(Locale.ROOT)).toList();
        if (there.size() < 2 || there.size() > TITLES.size() || !TITLES.subList(0, there.size()).equals(there)) {
            throw new LogException(line, String.join(", ", row.values()), "the titles cue, outcome, time, note, where");
        }
    }

    private static LogEntry entry(CSVRecord row, long line) throws LogException {
        if (row.size() > TITLES.size()) {
            throw new LogException(line, String.join(", ", row.values()), "at most five columns: cue, outcome, time, note, where; put a note that holds the"
                    + " separator into quotation marks");
        }
        if (row.get(0).isEmpty()) {
            throw new LogException(line, "", "the number or key of a cue");
        }
        Outcome outcome = Outcome.named(row.get(1))
                .orElseThrow(() -> new LogException(line, row.get(1), "fired, misfired, not-fired, dud or returned"));
        return new LogEntry(line, row.get(0), outcome, row.size() > 2 ? time(row.get(2), line) : Optional.empty(),
                row.size() > 3 ? row.get(3) : "");
    }

    private static Optional<LocalTime> time(String written, long line) throws LogException {
        try {
            return written.isEmpty() ? Optional.empty() : Optional.of(LocalTime.parse(written));
        } catch (DateTimeException e) {
            throw new LogException(line, written, "a time such as 22:34 or 22:34:10, or nothing");
        }
    }
}
