package org.girandole.sheets.release;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.List;
import java.util.Optional;
import org.girandole.plan.CheckedPlan;
import org.girandole.plan.script.ReleaseSpec;
import org.girandole.sheets.diff.Since;
import org.girandole.sheets.print.PaperSize;
import org.girandole.sheets.print.PdfWriter;
import org.girandole.sheets.print.Sheet;
import org.girandole.sheets.print.SheetSet;

/** The sheets, each on its own and all in one PDF for the printer. */
final class SheetsPart implements ReleasePart {
    private static final String FOLDER = "sheets/";
    private static final List<String> FORMATS = List.of("pdf", "html");

    private final Optional<Since> since;

    SheetsPart(Optional<Since> since) {
        this.since = since;
    }

    @Override
    public List<String> write(CheckedPlan checked, String toolVersion, ReleaseFolder folder) throws IOException {
        List<String> formats = checked.plan().script().release().map(ReleaseSpec::sheetFormats).orElse(FORMATS);
        PaperSize paper = PaperSize.of(checked.plan().script());
        if (formats.isEmpty()) {
            return List.of();
        }
        List<Sheet> sheets = SheetSet.of(checked, since, paper, toolVersion);
        if (formats.contains("html")) {
            for (Sheet sheet : sheets) {
                folder.writeText(FOLDER + sheet.fileName() + ".html", out -> out.write(sheet.html()));
            }
        }
        if (formats.contains("pdf")) {
            pdf(sheets, folder);
        }
        return formats.stream().filter(format -> !FORMATS.contains(format)).map(format -> "sheets as " + format).toList();
    }

    private static void pdf(List<Sheet> sheets, ReleaseFolder folder) throws IOException {
        // Laying out is the slow part of a release and each sheet is its own affair, so all processors share it; the order stays.
        List<byte[]> pdfs = sheets.parallelStream().map(SheetsPart::pdf).toList();
        for (int i = 0; i < pdfs.size(); i++) {
            byte[] bytes = pdfs.get(i);
            folder.write(FOLDER + sheets.get(i).fileName() + ".pdf", out -> out.write(bytes));
        }
        folder.write(FOLDER + "all-sheets.pdf", out -> PdfWriter.join(pdfs, out));
    }

    private static byte[] pdf(Sheet sheet) {
        ByteArrayOutputStream bytes = new ByteArrayOutputStream();
        try {
            PdfWriter.write(sheet.html(), bytes);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        return bytes.toByteArray();
    }
}
