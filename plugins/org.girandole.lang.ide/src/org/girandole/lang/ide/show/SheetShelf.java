package org.girandole.lang.ide.show;

import java.awt.image.BufferedImage;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.util.Base64;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.ConcurrentHashMap;
import javax.imageio.ImageIO;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDPage;
import org.apache.pdfbox.pdmodel.PDPageContentStream;
import org.apache.pdfbox.pdmodel.PDPageContentStream.AppendMode;
import org.apache.pdfbox.pdmodel.font.PDType0Font;
import org.apache.pdfbox.rendering.ImageType;
import org.apache.pdfbox.rendering.PDFRenderer;
import org.girandole.plan.CheckedPlan;
import org.girandole.protocol.ScriptParams;
import org.girandole.protocol.SheetFile;
import org.girandole.protocol.SheetFileParams;
import org.girandole.protocol.SheetList;
import org.girandole.protocol.SheetPage;
import org.girandole.protocol.SheetPageParams;
import org.girandole.sheets.print.PaperSize;
import org.girandole.sheets.print.PdfWriter;
import org.girandole.sheets.print.Sheet;
import org.girandole.sheets.print.SheetException;
import org.girandole.sheets.print.SheetSet;

/** Sheets of the plan last asked for, made once. A page is a picture of the very PDF that a release holds. */
final class SheetShelf {
    /** Stands on every page: what is taken from an editor is not a page of a release. */
    static final String NOT_RELEASED = "Editor preview, not released";
    private static final int NARROWEST_PX = 100;
    private static final int WIDEST_PX = 4000;
    private static final int POINTS_PER_INCH = 72;
    private static final String LETTERS = "fonts/DejaVuSansCondensed-Bold.ttf";
    private static final float MARK_PT = 10;
    private static final float MARK_LEFT_PT = 37;
    private static final float MARK_DOWN_PT = 24;

    private Made last;

    /** The sheets of one plan and those laid out so far. */
    private record Made(CheckedPlan plan, List<Sheet> sheets, Map<String, byte[]> pdfs) {
    }

    SheetList list(ScriptParams params, CheckedPlan plan) {
        return new SheetList(params.uri(), null, plan.plan().stamp().printed(), made(plan).sheets().stream()
                .map(sheet -> new SheetList.Entry(sheet.id(), sheet.fileName(), sheet.title())).toList());
    }

    SheetPage page(SheetPageParams params, CheckedPlan plan) {
        Optional<Sheet> sheet = sheet(params.id(), plan);
        if (sheet.isEmpty()) {
            return SheetPage.nothing(params.id(), unknown(params.id()));
        }
        try (PDDocument document = Loader.loadPDF(pdf(sheet.get(), plan))) {
            int pages = document.getNumberOfPages();
            int page = Math.max(1, Math.min(pages, params.page()));
            int widthPx = Math.max(NARROWEST_PX, Math.min(WIDEST_PX, params.widthPx()));
            float dpi = widthPx * POINTS_PER_INCH / document.getPage(page - 1).getMediaBox().getWidth();
            BufferedImage image = new PDFRenderer(document).renderImageWithDPI(page - 1, dpi, ImageType.RGB);
            ByteArrayOutputStream png = new ByteArrayOutputStream();
            ImageIO.write(image, "png", png);
            return new SheetPage(null, params.id(), sheet.get().title(), page, pages, image.getWidth(), image.getHeight(),
                    Base64.getEncoder().encodeToString(png.toByteArray()));
        } catch (IOException | SheetException e) {
            return SheetPage.nothing(params.id(), "Sheet " + params.id() + " cannot be shown: " + e.getMessage());
        }
    }

    SheetFile file(SheetFileParams params, CheckedPlan plan) {
        Optional<Sheet> sheet = sheet(params.id(), plan);
        if (sheet.isEmpty()) {
            return SheetFile.nothing(unknown(params.id()));
        }
        try {
            return switch (params.format()) {
                case "pdf" -> file(sheet.get().fileName() + ".pdf", pdf(sheet.get(), plan));
                case "html" -> file(sheet.get().fileName() + ".html", marked(sheet.get().html()).getBytes(StandardCharsets.UTF_8));
                default -> SheetFile.nothing("There is no format '" + params.format() + "' for a sheet; ask for pdf or html");
            };
        } catch (IOException | SheetException e) {
            return SheetFile.nothing("Sheet " + params.id() + " cannot be made: " + e.getMessage());
        }
    }

    private static SheetFile file(String name, byte[] content) {
        return new SheetFile(null, name, Base64.getEncoder().encodeToString(content));
    }

    /** In the upper margin of every page, which no sheet uses. */
    private static byte[] marked(byte[] pdf) throws IOException {
        try (PDDocument document = Loader.loadPDF(pdf); InputStream letters = PdfWriter.class.getResourceAsStream(LETTERS)) {
            PDType0Font font = PDType0Font.load(document, letters, true);
            for (PDPage page : document.getPages()) {
                try (PDPageContentStream content = new PDPageContentStream(document, page, AppendMode.APPEND, true, true)) {
                    content.beginText();
                    content.setFont(font, MARK_PT);
                    content.newLineAtOffset(MARK_LEFT_PT, page.getMediaBox().getHeight() - MARK_DOWN_PT);
                    content.showText(NOT_RELEASED);
                    content.endText();
                }
            }
            ByteArrayOutputStream out = new ByteArrayOutputStream();
            document.save(out);
            return out.toByteArray();
        }
    }

    private static String marked(String html) {
        return html.replaceFirst("<body[^>]*>", "$0<p><strong>" + NOT_RELEASED + "</strong></p>");
    }

    private static String unknown(String id) {
        return "There is no sheet '" + id + "' in this show; ask for the list of sheets again";
    }

    private Optional<Sheet> sheet(String id, CheckedPlan plan) {
        return made(plan).sheets().stream().filter(each -> each.id().equals(id)).findFirst();
    }

    private byte[] pdf(Sheet sheet, CheckedPlan plan) throws IOException {
        Map<String, byte[]> pdfs = made(plan).pdfs();
        byte[] known = pdfs.get(sheet.id());
        if (known == null) {
            ByteArrayOutputStream out = new ByteArrayOutputStream();
            PdfWriter.write(sheet.html(), out);
            known = marked(out.toByteArray());
            pdfs.put(sheet.id(), known);
        }
        return known;
    }

    /** Plans are large; whether it is the same one is asked by identity. */
    private synchronized Made made(CheckedPlan plan) {
        if (last == null || last.plan() != plan) {
            PaperSize paper = PaperSize.of(plan.plan().script());
            last = new Made(plan, SheetSet.of(plan, paper, NOT_RELEASED), new ConcurrentHashMap<>());
        }
        return last;
    }
}
