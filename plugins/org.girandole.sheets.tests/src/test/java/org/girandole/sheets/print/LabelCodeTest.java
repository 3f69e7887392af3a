package org.girandole.sheets.print;

import static org.assertj.core.api.Assertions.assertThat;

import java.awt.geom.Point2D;
import java.awt.image.BufferedImage;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;

import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.rendering.PDFRenderer;
import org.apache.pdfbox.text.PDFTextStripper;
import org.apache.pdfbox.text.TextPosition;
import org.junit.jupiter.api.Test;

import com.google.zxing.BinaryBitmap;
import com.google.zxing.DecodeHintType;
import com.google.zxing.RGBLuminanceSource;
import com.google.zxing.ReaderException;
import com.google.zxing.common.HybridBinarizer;
import com.google.zxing.qrcode.QRCodeReader;

/** Codes are read off the printed page as a telephone would: PDFBox makes the picture, ZXing's reader looks at it. */
class LabelCodeTest {
	private static final float DPI = 300;

	@Test
	void everyCodeOfAPageCanBeReadAndNamesItsTube() throws Exception {
		Sheet labels = SheetSet.of(HandMadeShow.full().checked(), PaperSize.A4, "0.1.0").stream().filter(sheet -> sheet.id().equals("12"))
				.findFirst().orElseThrow();
		ByteArrayOutputStream out = new ByteArrayOutputStream();
		PdfWriter.write(labels.html(), out);

		try (PDDocument pdf = Loader.loadPDF(out.toByteArray())) {
			BufferedImage page = new PDFRenderer(pdf).renderImageWithDPI(1, DPI);
			List<String> codes = new ArrayList<>();
			for (Point2D label : labels(pdf, 2)) {
				codes.add(read(page, label));
			}

			// The second page has the ten labels of position B: a chain of eight in tubes 2 to 9, a salute in tube 12, a fountain.
			assertThat(codes).containsExactlyInAnyOrder(
					"GIRANDOLE1 stamp=DD62-7833 position=B rack=R3 tube=2 cue=11", "GIRANDOLE1 stamp=DD62-7833 position=B rack=R3 tube=3 cue=11",
					"GIRANDOLE1 stamp=DD62-7833 position=B rack=R3 tube=4 cue=11", "GIRANDOLE1 stamp=DD62-7833 position=B rack=R3 tube=5 cue=11",
					"GIRANDOLE1 stamp=DD62-7833 position=B rack=R3 tube=6 cue=11", "GIRANDOLE1 stamp=DD62-7833 position=B rack=R3 tube=7 cue=11",
					"GIRANDOLE1 stamp=DD62-7833 position=B rack=R3 tube=8 cue=11", "GIRANDOLE1 stamp=DD62-7833 position=B rack=R3 tube=9 cue=11",
					"GIRANDOLE1 stamp=DD62-7833 position=B rack=R3 tube=12 cue=12", "GIRANDOLE1 stamp=DD62-7833 position=B ground cue=13");
		}
	}

	/** Where the words of each label begin: its position's name is the only word of that size that stands at the start of a line. */
	private static List<Point2D> labels(PDDocument pdf, int page) throws IOException {
		List<Point2D> found = new ArrayList<>();
		PDFTextStripper stripper = new PDFTextStripper() {
			@Override
			protected void processTextPosition(TextPosition text) {
				if (text.getUnicode().equals("B") && text.getFontSize() > 16) {
					found.add(new Point2D.Float(text.getXDirAdj(), text.getYDirAdj()));
				}
			}
		};
		stripper.setStartPage(page);
		stripper.setEndPage(page);
		stripper.getText(pdf);
		return found;
	}

	/** Reads the code that stands to the left of a label's words. */
	private static String read(BufferedImage page, Point2D words) throws ReaderException {
		double dotsPerPoint = DPI / 72;
		double mm = DPI / 25.4;
		int x = (int) (words.getX() * dotsPerPoint - 26.6 * mm);
		int y = (int) (words.getY() * dotsPerPoint - 4.5 * mm);
		int size = (int) (25 * mm);
		int[] pixels = page.getRGB(x, y, size, size, null, 0, size);
		return new QRCodeReader().decode(new BinaryBitmap(new HybridBinarizer(new RGBLuminanceSource(size, size, pixels))),
				Map.of(DecodeHintType.TRY_HARDER, true)).getText();
	}
}
