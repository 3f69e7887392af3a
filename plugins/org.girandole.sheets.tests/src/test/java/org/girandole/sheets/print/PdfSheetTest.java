package org.girandole.sheets.print;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.StringReader;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.EnumMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.TimeZone;

import javax.xml.parsers.DocumentBuilderFactory;

import org.apache.pdfbox.Loader;
import org.apache.pdfbox.cos.COSName;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDPage;
import org.apache.pdfbox.pdmodel.font.PDFont;
import org.apache.pdfbox.text.PDFTextStripper;
import org.apache.pdfbox.text.TextPosition;
import org.girandole.plan.script.EffectKind;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.w3c.dom.Node;
import org.xml.sax.InputSource;

/** The PDFs are read back with PDFBox, which did not lay them out. */
class PdfSheetTest {
	private static final float MM = 72 / 25.4f;
	/** The full show's sheets, laid out once for the tests that only read them. */
	private static final Map<PaperSize, Map<Sheet, byte[]>> LAID_OUT = new EnumMap<>(PaperSize.class);
	private final Locale locale = Locale.getDefault();
	private final TimeZone zone = TimeZone.getDefault();

	@AfterEach
	void restore() {
		Locale.setDefault(locale);
		TimeZone.setDefault(zone);
	}

	@ParameterizedTest
	@EnumSource(PaperSize.class)
	void everySheetFitsItsPaperAndLosesNoWord(PaperSize paper) throws Exception {
		for (var laidOut : laidOut(paper).entrySet()) {
			Sheet sheet = laidOut.getKey();
			try (PDDocument pdf = Loader.loadPDF(laidOut.getValue())) {
				String text = new PDFTextStripper().getText(pdf);
				assertThat(text).as(sheet.fileName()).contains("page 1 of " + pdf.getNumberOfPages(),
						"page " + pdf.getNumberOfPages() + " of " + pdf.getNumberOfPages());
				assertThat(squeezed(text)).as(sheet.fileName()).contains(words(sheet));
				assertThat(text).doesNotContain("\uFFFD");
				for (PDPage page : pdf.getPages()) {
					assertThat(page.getMediaBox().getWidth() / MM).isCloseTo((float) paper.widthMm(), within(0.1f));
					assertThat(page.getMediaBox().getHeight() / MM).isCloseTo((float) paper.heightMm(), within(0.1f));
				}
				assertThat(outside(pdf, 8 * MM)).as(sheet.fileName()).isEmpty();
			}
		}
	}

	@Test
	void everyPageSaysShowSlotStampAndPage() throws Exception {
		for (var laidOut : laidOut(PaperSize.A4).entrySet()) {
			Sheet sheet = laidOut.getKey();
			try (PDDocument pdf = Loader.loadPDF(laidOut.getValue())) {
				for (int number = 1; number <= pdf.getNumberOfPages(); number++) {
					PDFTextStripper stripper = new PDFTextStripper();
					stripper.setStartPage(number);
					stripper.setEndPage(number);
					assertThat(stripper.getText(pdf)).as(sheet.fileName() + " page " + number).contains("Night on the Quay (invented)", "slot",
							"release DD62-7833", "NOT CLEAN: 1 unresolved error", "page " + number + " of " + pdf.getNumberOfPages());
				}
			}
		}
	}

	@Test
	void tableHeadsComeAgainOnEveryPage() throws Exception {
		HandMadeShow show = HandMadeShow.full();
		for (int i = 0; i < 60; i++) {
			show.cue(show.soundtracks.get(0), 80_000_000 + i * 1_000_000L, "A", show.effects.get(4)).pin("M1", 11, 4).add();
		}
		Sheet table = SheetSet.of(show.checked(), PaperSize.A4, "0.1.0").stream().filter(sheet -> sheet.id().equals("3")).findFirst().orElseThrow();
		try (PDDocument pdf = Loader.loadPDF(pdf(table))) {
			String text = new PDFTextStripper().getText(pdf);
			assertThat(pdf.getNumberOfPages()).isGreaterThan(2);
			// One head a page, and one more because the second soundtrack begins in the middle of a page.
			assertThat(text.split("Rack · tube", -1).length - 1).isEqualTo(pdf.getNumberOfPages() + 1);
		}
	}

	@Test
	void fontsAreEmbeddedAsSubsetsAndDrawingsAreVectors() throws Exception {
		for (var laidOut : laidOut(PaperSize.A4).entrySet()) {
			Sheet sheet = laidOut.getKey();
			try (PDDocument pdf = Loader.loadPDF(laidOut.getValue())) {
				for (PDPage page : pdf.getPages()) {
					List<String> names = new ArrayList<>();
					for (COSName name : page.getResources().getFontNames()) {
						PDFont font = page.getResources().getFont(name);
						assertThat(font.isEmbedded()).as(font.getName()).isTrue();
						names.add(font.getName());
					}
					assertThat(names).isNotEmpty().allMatch(name -> name.matches("[A-Z]{6}\\+DejaVuSansCondensed(-Bold)?"));
					for (COSName name : page.getResources().getXObjectNames()) {
						assertThat(page.getResources().isImageXObject(name)).as("raster image in " + sheet.fileName()).isFalse();
					}
				}
			}
		}
	}

	@Test
	void endlessNamesWrapInsideThePaper() throws Exception {
		HandMadeShow show = HandMadeShow.full();
		show.label = "W".repeat(120);
		show.rack("R" + "8".repeat(60), "A", 0.1, HandMadeShow.tubes(2, 0.075));
		show.cue(show.soundtracks.get(0), 70_000_000, "Position" + "X".repeat(60),
				show.add(HandMadeShow.effect("Long", "M".repeat(150), EffectKind.SHELL, 0.075, 0.1, "1.3G", "UN0335")))
				.tube("R" + "8".repeat(60), 1).pin("M1", 12, 4).add();
		for (Sheet sheet : SheetSet.of(show.checked(), PaperSize.LETTER, "0.1.0")) {
			try (PDDocument pdf = Loader.loadPDF(pdf(sheet))) {
				assertThat(outside(pdf, 5 * MM)).as(sheet.fileName()).isEmpty();
			}
		}
	}

	@Test
	void whatTheTypeLacksPrintsAsAReplacementAndLosesNothingElse() throws Exception {
		HandMadeShow show = HandMadeShow.full();
		show.label = "Fête d’été Ωμέγα Ночь 花火 \uD83C\uDF86 end";
		try (PDDocument pdf = Loader.loadPDF(pdf(SheetSet.of(show.checked(), PaperSize.A4, "0.1.0").get(0)))) {
			assertThat(new PDFTextStripper().getText(pdf)).contains("Fête d’été Ωμέγα Ночь \uFFFD", " end");
		}
	}

	@Test
	void sameInputSameBytesWhateverLocaleAndZone() throws Exception {
		Locale.setDefault(Locale.US);
		TimeZone.setDefault(TimeZone.getTimeZone("Pacific/Honolulu"));
		List<byte[]> first = all();
		Locale.setDefault(Locale.forLanguageTag("ar-EG-u-nu-arab"));
		TimeZone.setDefault(TimeZone.getTimeZone("Pacific/Kiritimati"));
		List<byte[]> second = all();

		assertThat(first).hasSameSizeAs(second);
		for (int i = 0; i < first.size(); i++) {
			assertThat(Arrays.equals(first.get(i), second.get(i))).as("output " + i).isTrue();
		}
	}

	@Test
	void noDateIsWritten() throws Exception {
		for (byte[] output : laidOut(PaperSize.A4).values()) {
			assertThat(new String(output, StandardCharsets.ISO_8859_1)).doesNotContain("CreationDate", "ModDate", "CreateDate");
		}
	}

	@Test
	void joinedSheetsKeepTheirOwnPageNumbers() throws Exception {
		List<byte[]> pdfs = List.copyOf(laidOut(PaperSize.A4).values());
		int pages = 0;
		for (byte[] pdf : pdfs) {
			try (PDDocument one = Loader.loadPDF(pdf)) {
				pages += one.getNumberOfPages();
			}
		}
		ByteArrayOutputStream joined = new ByteArrayOutputStream();
		PdfWriter.join(pdfs, joined);
		try (PDDocument all = Loader.loadPDF(joined.toByteArray())) {
			assertThat(all.getNumberOfPages()).isEqualTo(pages);
			assertThat(new PDFTextStripper().getText(all).split("page 1 of ", -1).length - 1).isEqualTo(pdfs.size());
		}
	}

	private static List<byte[]> all() throws IOException {
		List<byte[]> outputs = new ArrayList<>();
		List<byte[]> pdfs = new ArrayList<>();
		for (Sheet sheet : SheetSet.of(HandMadeShow.full().checked(), PaperSize.A4, "0.1.0")) {
			outputs.add(sheet.html().getBytes(StandardCharsets.UTF_8));
			pdfs.add(pdf(sheet));
		}
		outputs.addAll(pdfs);
		ByteArrayOutputStream joined = new ByteArrayOutputStream();
		PdfWriter.join(pdfs, joined);
		outputs.add(joined.toByteArray());
		return outputs;
	}

	private static Map<Sheet, byte[]> laidOut(PaperSize paper) throws IOException {
		if (!LAID_OUT.containsKey(paper)) {
			Map<Sheet, byte[]> pdfs = new LinkedHashMap<>();
			for (Sheet sheet : SheetSet.of(HandMadeShow.full().checked(), paper, "0.1.0")) {
				pdfs.put(sheet, pdf(sheet));
			}
			LAID_OUT.put(paper, pdfs);
		}
		return LAID_OUT.get(paper);
	}

	private static byte[] pdf(Sheet sheet) throws IOException {
		ByteArrayOutputStream out = new ByteArrayOutputStream();
		PdfWriter.write(sheet.html(), out);
		return out.toByteArray();
	}

	/** Glyphs nearer to the edge of the paper than this, or beyond it. */
	private static List<String> outside(PDDocument pdf, float marginPt) throws IOException {
		List<String> found = new ArrayList<>();
		new PDFTextStripper() {
			@Override
			protected void processTextPosition(TextPosition text) {
				if (text.getXDirAdj() < marginPt || text.getXDirAdj() + text.getWidthDirAdj() > text.getPageWidth() - marginPt
						|| text.getYDirAdj() - text.getHeightDir() < marginPt || text.getYDirAdj() > text.getPageHeight() - marginPt) {
					found.add(text.getUnicode() + " on page " + getCurrentPageNo() + " at " + text.getXDirAdj() + ", " + text.getYDirAdj());
				}
			}
		}.getText(pdf);
		return found;
	}

	/** Every word of the document's body that is short enough to stand unbroken on one line. */
	private static List<String> words(Sheet sheet) throws Exception {
		List<String> words = new ArrayList<>();
		collect(DocumentBuilderFactory.newInstance().newDocumentBuilder().parse(new InputSource(new StringReader(sheet.html())))
				.getElementsByTagName("body").item(0), words);
		return words.stream().filter(word -> !word.isEmpty() && word.length() <= 10).distinct().toList();
	}

	private static void collect(Node node, List<String> words) {
		if (node.getNodeType() == Node.TEXT_NODE) {
			words.addAll(List.of(node.getTextContent().split("\\s+")));
		}
		for (Node child = node.getFirstChild(); child != null; child = child.getNextSibling()) {
			collect(child, words);
		}
	}

	private static String squeezed(String text) {
		return text.replaceAll("\\s+", "");
	}
}
