package org.girandole.sheets.print.html;

import java.util.Map;

import com.google.zxing.BarcodeFormat;
import com.google.zxing.EncodeHintType;
import com.google.zxing.WriterException;
import com.google.zxing.common.BitMatrix;
import com.google.zxing.qrcode.QRCodeWriter;
import com.google.zxing.qrcode.decoder.ErrorCorrectionLevel;

/** A QR code (ISO/IEC 18004) as a drawing: one path, each run of dark cells of a row one rectangle. */
final class SquareCode {
	private static final Map<EncodeHintType, Object> HINTS = Map.of(EncodeHintType.MARGIN, 0, EncodeHintType.CHARACTER_SET, "UTF-8",
			EncodeHintType.ERROR_CORRECTION, ErrorCorrectionLevel.M);

	private SquareCode() {
	}

	/** An SVG element without quiet zone: four cells of white must stand around it. */
	static String svg(String text, double sizeMm) {
		BitMatrix cells = encode(text);
		StringBuilder path = new StringBuilder();
		for (int y = 0; y < cells.getHeight(); y++) {
			for (int x = 0; x < cells.getWidth(); x++) {
				if (cells.get(x, y)) {
					int run = 1;
					while (x + run < cells.getWidth() && cells.get(x + run, y)) {
						run++;
					}
					path.append('M').append(x).append(' ').append(y).append('h').append(run).append("v1h-").append(run).append('z');
					x += run - 1;
				}
			}
		}
		String size = Svg.number(sizeMm);
		return "<svg xmlns=\"http://www.w3.org/2000/svg\" width=\"" + size + "mm\" height=\"" + size + "mm\" viewBox=\"0 0 " + cells.getWidth() + " "
				+ cells.getHeight() + "\"><path d=\"" + path + "\" fill=\"#000000\"/></svg>";
	}

	private static BitMatrix encode(String text) {
		try {
			return new QRCodeWriter().encode(text, BarcodeFormat.QR_CODE, 0, 0, HINTS);
		} catch (WriterException e) {
			throw new IllegalArgumentException("\"" + text + "\" is too long for a label's square code", e);
		}
	}
}
