package org.girandole.sheets.release;

import com.google.gson.JsonObject;
import com.google.gson.JsonParseException;
import com.google.gson.JsonParser;
import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Enumeration;
import java.util.List;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.zip.ZipEntry;
import java.util.zip.ZipFile;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVParser;
import org.apache.commons.csv.CSVRecord;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.text.PDFTextStripper;

/** Reads the stamp out of the files of a release, as somebody who holds the page would. */
final class CarriedStamps {
    private static final Pattern ON_A_PAGE = Pattern.compile("release\\s+([0-9A-F]{4}-[0-9A-F]{4})");
    private static final Pattern IN_HTML = Pattern.compile("release <b class=\"nowrap\">([^<]*)</b>");
    private static final Pattern IN_A_WORKBOOK = Pattern.compile("stamp ([0-9A-F]{4}-[0-9A-F]{4})");
    private static final int MOST_BYTES = 1 << 26;
    private static final String STAMP_COLUMN = ",Stamp";

    private final Path folder;
    private final ReleaseIndex index;

    CarriedStamps(Path folder, ReleaseIndex index) {
        this.folder = folder;
        this.index = index;
    }

    /** Whether files of this name carry the stamp in a form that can be read. */
    static boolean carries(String path) {
        return path.equals(PlanPart.NAME) || path.equals("standard.csv") || path.equals("tables.xlsx")
                || path.startsWith("sheets/") && (path.endsWith(".html") || path.endsWith(".pdf"));
    }

    /** What is wrong with the stamp of a file, in words; empty when it carries the release's stamp throughout. */
    Optional<String> trouble(String path) {
        Path file = folder.resolve(path);
        try {
            if (path.equals(PlanPart.NAME)) {
                return plan(file);
            }
            List<Part> parts = path.equals("standard.csv") ? table(file)
                    : path.equals("tables.xlsx") ? workbook(file) : path.endsWith(".html") ? html(file) : pdf(file);
            for (Part part : parts) {
                if (part.stamps().isEmpty()) {
                    return Optional.of(part.name() + " carries no stamp");
                }
                for (String stamp : part.stamps()) {
                    if (!stamp.equals(index.stampPrinted())) {
                        return Optional.of(part.name() + " carries the stamp " + stamp);
                    }
                }
            }
            return Optional.empty();
        } catch (IOException | UncheckedIOException | JsonParseException | IllegalStateException | IllegalArgumentException | NullPointerException
                | UnsupportedOperationException | ClassCastException e) {
            return Optional.of("it cannot be read as what its name says");
        }
    }

    private Optional<String> plan(Path file) throws IOException {
        JsonObject json = JsonParser.parseString(Files.readString(file, StandardCharsets.UTF_8)).getAsJsonObject();
        if (!json.get("stamp").getAsString().equals(index.stamp())) {
            return Optional.of("it carries the stamp " + json.get("stamp").getAsString());
        }
        if (!json.getAsJsonArray("findings").equals(index.findings())) {
            return Optional.of("its findings are not those of " + ReleaseJson.NAME);
        }
        return json.getAsJsonArray("cues").size() == index.cues() ? Optional.empty()
                : Optional.of("it has " + json.getAsJsonArray("cues").size() + " cues, and " + ReleaseJson.NAME + " counts " + index.cues());
    }

    /** The built-in table ends with a column for it; a table of that name that the script lays out may have none. */
    private static List<Part> table(Path file) throws IOException {
        List<Part> lines = new ArrayList<>();
        try (BufferedReader reader = Files.newBufferedReader(file, StandardCharsets.UTF_8)) {
            String head = reader.readLine();
            if (head != null && head.endsWith(STAMP_COLUMN)) {
                for (CSVRecord line : CSVParser.parse(reader, CSVFormat.RFC4180)) {
                    lines.add(new Part("its line " + (line.getRecordNumber() + 1), List.of(line.get(line.size() - 1))));
                }
            }
        }
        return lines;
    }

    private static List<Part> workbook(Path file) throws IOException {
        List<Part> sheets = new ArrayList<>();
        try (ZipFile zip = new ZipFile(file.toFile(), StandardCharsets.UTF_8)) {
            for (Enumeration<? extends ZipEntry> entries = zip.entries(); entries.hasMoreElements();) {
                ZipEntry entry = entries.nextElement();
                if (entry.getName().startsWith("xl/worksheets/") && entry.getName().endsWith(".xml")) {
                    try (InputStream in = zip.getInputStream(entry)) {
                        sheets.add(new Part("its sheet " + (sheets.size() + 1),
                                found(IN_A_WORKBOOK, new String(in.readNBytes(MOST_BYTES), StandardCharsets.UTF_8))));
                    }
                }
            }
        }
        return sheets.isEmpty() ? List.of(new Part("it", List.of())) : sheets;
    }

    private static List<Part> html(Path file) throws IOException {
        return List.of(new Part("it", found(IN_HTML, Files.readString(file, StandardCharsets.UTF_8))));
    }

    private static List<Part> pdf(Path file) throws IOException {
        List<Part> pages = new ArrayList<>();
        try (PDDocument document = Loader.loadPDF(file.toFile())) {
            PDFTextStripper text = new PDFTextStripper();
            for (int page = 1; page <= document.getNumberOfPages(); page++) {
                text.setStartPage(page);
                text.setEndPage(page);
                pages.add(new Part("its page " + page, found(ON_A_PAGE, text.getText(document))));
            }
        }
        return pages.isEmpty() ? List.of(new Part("it", List.of())) : pages;
    }

    private static List<String> found(Pattern pattern, String text) {
        List<String> found = new ArrayList<>();
        for (Matcher matcher = pattern.matcher(text); matcher.find();) {
            found.add(matcher.group(1));
        }
        return found;
    }

    private record Part(String name, List<String> stamps) {
    }
}
