package org.girandole.sheets.print.html;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.List;

import org.girandole.sheets.print.values.PositionLoad.TubeLoad;

/**
 * The tubes of a rack seen from behind, drawn to the same scale of calibre, each at the angle to which it is to be set. Loaded tubes
 * are drawn heavy, empty ones dashed; an igniter shows as a dot with its lead, a fuse between the items of a chain as a wavy line.
 */
final class RackPicture {
	private static final double HEIGHT_MM = 25;
	private static final double FLOOR_MM = 21;
	private static final double TUBE_LENGTH_MM = 16;
	private static final double WIDEST_M = 0.2;

	private RackPicture() {
	}

	/** An SVG element as wide as its tubes, to stand above a table with columns of {@code cellMm}. */
	static String svg(List<TubeLoad> tubes, double cellMm) {
		double widthMm = cellMm * tubes.size();
		StringBuilder svg = new StringBuilder();
		svg.append("<svg xmlns=\"http://www.w3.org/2000/svg\" width=\"").append(number(widthMm)).append("mm\" height=\"")
				.append(number(HEIGHT_MM)).append("mm\" viewBox=\"0 0 ").append(number(widthMm)).append(' ').append(number(HEIGHT_MM))
				.append("\">");
		for (int i = 0; i < tubes.size(); i++) {
			tube(svg, tubes.get(i), (i + 0.5) * cellMm, cellMm);
		}
		for (int i = 0; i + 1 < tubes.size(); i++) {
			if (fusedTo(tubes.get(i), tubes.get(i + 1))) {
				fuse(svg, (i + 0.5) * cellMm, cellMm);
			}
		}
		line(svg, 0, FLOOR_MM, widthMm, FLOOR_MM, 0.8, "");
		line(svg, 0.4, FLOOR_MM, 0.4, HEIGHT_MM, 0.8, "");
		line(svg, widthMm - 0.4, FLOOR_MM, widthMm - 0.4, HEIGHT_MM, 0.8, "");
		return svg.append("</svg>").toString();
	}

	private static void tube(StringBuilder svg, TubeLoad tube, double centreMm, double cellMm) {
		double widthMm = Math.min(0.62 * cellMm, Math.max(3.5, 0.62 * 24 * tube.calibreM() / WIDEST_M + 2.5));
		boolean loaded = !tube.loads().isEmpty();
		double angle = loaded ? tube.loads().get(0).lean().drawnDeg() : 0;
		svg.append("<g transform=\"rotate(").append(number(angle)).append(' ').append(number(centreMm)).append(' ').append(number(FLOOR_MM))
				.append(")\">");
		svg.append("<rect x=\"").append(number(centreMm - widthMm / 2)).append("\" y=\"").append(number(FLOOR_MM - TUBE_LENGTH_MM))
				.append("\" width=\"").append(number(widthMm)).append("\" height=\"").append(number(TUBE_LENGTH_MM))
				.append("\" fill=\"#ffffff\" stroke=\"#000000\" stroke-width=\"").append(loaded ? "0.7" : "0.25").append('"')
				.append(loaded ? "" : " stroke-dasharray=\"1 0.8\"").append("/>");
		if (loaded) {
			double radiusMm = Math.min(widthMm / 2 - 0.6, 4);
			circle(svg, centreMm, FLOOR_MM - 1 - radiusMm, radiusMm, "#c8c8c8");
			if (tube.loads().get(0).igniterHere()) {
				circle(svg, centreMm, FLOOR_MM - TUBE_LENGTH_MM - 2.2, 0.9, "#000000");
				line(svg, centreMm, FLOOR_MM - TUBE_LENGTH_MM - 2.2, centreMm, FLOOR_MM - 1 - 2 * radiusMm, 0.35, "");
			}
		}
		svg.append("</g>");
	}

	private static boolean fusedTo(TubeLoad left, TubeLoad right) {
		return left.loads().size() == 1 && right.loads().size() == 1 && left.loads().get(0).cue() == right.loads().get(0).cue()
				&& !right.loads().get(0).igniterHere();
	}

	private static void fuse(StringBuilder svg, double fromMm, double cellMm) {
		double y = FLOOR_MM - TUBE_LENGTH_MM - 1.2;
		svg.append("<path d=\"M ").append(number(fromMm)).append(' ').append(number(y)).append(" q ").append(number(cellMm / 4))
				.append(" -2.4 ").append(number(cellMm / 2)).append(" 0 t ").append(number(cellMm / 2))
				.append(" 0\" fill=\"none\" stroke=\"#000000\" stroke-width=\"0.5\"/>");
	}

	private static void circle(StringBuilder svg, double x, double y, double radius, String fill) {
		svg.append("<circle cx=\"").append(number(x)).append("\" cy=\"").append(number(y)).append("\" r=\"").append(number(radius))
				.append("\" fill=\"").append(fill).append("\" stroke=\"#000000\" stroke-width=\"0.35\"/>");
	}

	private static void line(StringBuilder svg, double x1, double y1, double x2, double y2, double width, String dashes) {
		svg.append("<line x1=\"").append(number(x1)).append("\" y1=\"").append(number(y1)).append("\" x2=\"").append(number(x2))
				.append("\" y2=\"").append(number(y2)).append("\" stroke=\"#000000\" stroke-width=\"").append(number(width)).append('"')
				.append(dashes).append("/>");
	}

	/** A coordinate with at most three decimals, the same in every locale. */
	static String number(double value) {
		BigDecimal rounded = BigDecimal.valueOf(value).setScale(3, RoundingMode.HALF_UP).stripTrailingZeros();
		return rounded.signum() == 0 ? "0" : rounded.toPlainString();
	}
}
