package org.girandole.sheets.print;

import static org.assertj.core.api.Assertions.assertThat;

import java.awt.image.BufferedImage;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;

import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.rendering.PDFRenderer;
import org.apache.pdfbox.text.PDFTextStripper;
import org.girandole.plan.script.LabelGrid;
import org.girandole.sheets.print.values.LabelPages;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

import com.google.zxing.BinaryBitmap;
import com.google.zxing.DecodeHintType;
import com.google.zxing.RGBLuminanceSource;
import com.google.zxing.ReaderException;
import com.google.zxing.common.HybridBinarizer;
import com.google.zxing.qrcode.QRCodeReader;

/** Codes are read off the printed page as a telephone would: PDFBox makes the picture, ZXing's reader looks at it. */
class LabelCodeTest {
	private static final float DPI = 300;

	/** The ten labels of position B: a chain of eight in tubes 2 to 9, a salute in tube 12, a fountain. */
	private static final List<String> AT_B = List.of("GIRANDOLE1 stamp=DD62-7833 position=B rack=R3 tube=2 cue=11",
			"GIRANDOLE1 stamp=DD62-7833 position=B rack=R3 tube=3 cue=11", "GIRANDOLE1 stamp=DD62-7833 position=B rack=R3 tube=4 cue=11",
			"GIRANDOLE1 stamp=DD62-7833 position=B rack=R3 tube=5 cue=11", "GIRANDOLE1 stamp=DD62-7833 position=B rack=R3 tube=6 cue=11",
			"GIRANDOLE1 stamp=DD62-7833 position=B rack=R3 tube=7 cue=11", "GIRANDOLE1 stamp=DD62-7833 position=B rack=R3 tube=8 cue=11",
			"GIRANDOLE1 stamp=DD62-7833 position=B rack=R3 tube=9 cue=11", "GIRANDOLE1 stamp=DD62-7833 position=B rack=R3 tube=12 cue=12",
			"GIRANDOLE1 stamp=DD62-7833 position=B ground cue=13");

	/** No grid is plain paper; the others are low labels without room for a page's head, and high ones. */
	static List<Optional<LabelGrid>> grids() {
		return List.of(Optional.empty(), Optional.of(new LabelGrid(3, 11, 0.0667, 0.0254, 0.0045, 0.0127, 0.002, 0)),
				Optional.of(new LabelGrid(2, 6, 0.0991, 0.0423, 0.0047, 0.0215, 0.0025, 0.001)));
	}

	@ParameterizedTest
	@MethodSource("grids")
	void everyLabelLiesWhereThePaperHasItAndItsCodeCanBeRead(Optional<LabelGrid> written) throws Exception {
		HandMadeShow show = HandMadeShow.full();
		written.ifPresent(show::labels);
		LabelGrid grid = written.orElse(LabelPages.PLAIN);

		try (PDDocument pdf = Loader.loadPDF(labelSheet(show))) {
			// The first page says what follows; each of the three positions has one sheet of paper, B the second.
			assertThat(pdf.getNumberOfPages()).isEqualTo(4);
			BufferedImage page = new PDFRenderer(pdf).renderImageWithDPI(2, DPI);
			double dotsPerM = DPI / 0.0254;
			List<String> codes = new ArrayList<>();
			for (int i = 0; i < AT_B.size(); i++) {
				// Places by hand from the grid: rows from the top, columns from the left.
				double leftM = grid.leftM() + (i % grid.across()) * (grid.widthM() + grid.gapAcrossM());
				double topM = grid.topM() + (i / grid.across()) * (grid.heightM() + grid.gapDownM());
				codes.add(read(page.getSubimage((int) (leftM * dotsPerM), (int) (topM * dotsPerM), (int) (0.024 * dotsPerM),
						(int) (Math.min(grid.heightM(), 0.0254) * dotsPerM))));
			}
			assertThat(codes).isEqualTo(AT_B);
		}
	}

	@Test
	void aPageOfLabelsHasHeadAndFootOnlyWhereTheLabelsLeaveRoom() throws Exception {
		assertThat(pageOfB(labelSheet(HandMadeShow.full()))).contains("release DD62-7833", "page 3 of 4", "Tube labels");
		assertThat(pageOfB(labelSheet(HandMadeShow.full().labels(grids().get(1).orElseThrow())))).doesNotContain("page 3 of 4", "Tube labels");
	}

	private static byte[] labelSheet(HandMadeShow show) throws IOException {
		Sheet labels = SheetSet.of(show.checked(), PaperSize.A4, "0.1.0").stream().filter(sheet -> sheet.id().equals("12")).findFirst()
				.orElseThrow();
		ByteArrayOutputStream out = new ByteArrayOutputStream();
		PdfWriter.write(labels.html(), out);
		return out.toByteArray();
	}

	private static String pageOfB(byte[] bytes) throws IOException {
		try (PDDocument pdf = Loader.loadPDF(bytes)) {
			PDFTextStripper stripper = new PDFTextStripper();
			stripper.setStartPage(3);
			stripper.setEndPage(3);
			return stripper.getText(pdf);
		}
	}

	private static String read(BufferedImage label) throws ReaderException {
		int[] pixels = label.getRGB(0, 0, label.getWidth(), label.getHeight(), null, 0, label.getWidth());
		return new QRCodeReader().decode(new BinaryBitmap(new HybridBinarizer(new RGBLuminanceSource(label.getWidth(), label.getHeight(),
				pixels))), Map.of(DecodeHintType.TRY_HARDER, true)).getText();
	}
}
