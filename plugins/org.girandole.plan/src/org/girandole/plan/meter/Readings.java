package org.girandole.plan.meter;

import java.io.IOException;
import java.io.StringReader;
import java.io.UncheckedIOException;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.Set;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVParser;
import org.apache.commons.csv.CSVRecord;

/**
 * Reads a list of readings: three columns, module, pin and ohms, separated by commas, semicolons or tabs (RFC 4180), with or without a line of
 * titles. An open circuit is written {@code open} or {@code OL}; a pin without a reading is left empty and passed over. Ohms may have a decimal comma when the
 * separator is another.
 */
public final class Readings {
    private static final Set<String> OPEN = Set.of("open", "ol", "inf");
    private static final double MOST_OHM = 1e9;

    private Readings() {
    }

    /** The readings of a list, in its order. @throws ReadingsException naming the first line that makes no sense */
    public static List<Reading> parse(String text) throws ReadingsException {
        String plain = text.startsWith("\uFEFF") ? text.substring(1) : text;
        char separator = separator(plain);
        List<Reading> readings = new ArrayList<>();
        Map<String, Long> lines = new HashMap<>();
        CSVFormat format = CSVFormat.RFC4180.builder().setDelimiter(separator).setIgnoreEmptyLines(true).setTrim(true).get();
        try (CSVParser parser = CSVParser.parse(new StringReader(plain), format)) {
            for (CSVRecord row : parser) {
                long line = parser.getCurrentLineNumber();
                boolean title = row.getRecordNumber() == 1 && row.size() > 1 && !row.get(1).matches("\\d+");
                if (title || row.size() > 2 && row.get(2).isEmpty()) {
                    continue;
                }
                Reading reading = reading(row, line, separator);
                Long other = lines.putIfAbsent(reading.module() + ":" + reading.pin(), line);
                if (other != null) {
                    throw new ReadingsException(line, reading.module() + " " + reading.pin(), "each pin once; it is in line " + other + " too");
                }
                readings.add(reading);
            }
        } catch (UncheckedIOException | IOException e) {
            throw new ReadingsException(0, "quotation marks that do not close", "rows of module, pin, ohms");
        }
        return List.copyOf(readings);
    }

    private static char separator(String text) {
        String first = text.lines().filter(line -> !line.isBlank()).findFirst().orElse("");
        return first.indexOf(';') >= 0 ? ';' : first.indexOf('\t') >= 0 ? '\t' : ',';
    }

    private static Reading reading(CSVRecord row, long line, char separator) throws ReadingsException {
        if (row.size() != 3) {
            throw new ReadingsException(line, String.join(String.valueOf(separator), row.values()), "three columns: module, pin, ohms");
        }
        if (!row.get(1).matches("[1-9]\\d{0,5}")) {
            throw new ReadingsException(line, row.get(1), "the number of a pin, counted from 1");
        }
        return new Reading(row.get(0), Integer.parseInt(row.get(1)), ohm(row.get(2), line, separator));
    }

    private static OptionalDouble ohm(String written, long line, char separator) throws ReadingsException {
        if (OPEN.contains(written.toLowerCase(Locale.ROOT))) {
            return OptionalDouble.empty();
        }
        String number = separator == ',' ? written : written.replace(',', '.');
        if (!number.matches("\\d{1,10}(\\.\\d{1,6})?") || Double.parseDouble(number) > MOST_OHM) {
            throw new ReadingsException(line, written, "ohms such as 7.4, or open");
        }
        return OptionalDouble.of(Double.parseDouble(number));
    }
}
