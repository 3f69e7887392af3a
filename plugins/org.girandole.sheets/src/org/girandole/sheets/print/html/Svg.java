package org.girandole.sheets.print.html;

import java.math.BigDecimal;
import java.math.RoundingMode;

/** A drawing being written, in millimetres of paper. It has no words: those stand in the document beside or above it. */
final class Svg {
	/** Line of a pattern: dashes and gaps, or none. */
	static final String SOLID = "";

	private final StringBuilder out = new StringBuilder();

	/** An empty drawing of this size. */
	Svg(double widthMm, double heightMm) {
		out.append("<svg xmlns=\"http://www.w3.org/2000/svg\" width=\"").append(number(widthMm)).append("mm\" height=\"").append(number(heightMm))
				.append("mm\" viewBox=\"0 0 ").append(number(widthMm)).append(' ').append(number(heightMm)).append("\">");
	}

	/** A straight line. */
	Svg line(double x1, double y1, double x2, double y2, double width, String dashes) {
		return path("M" + point(x1, y1) + "L" + point(x2, y2), "none", width, dashes);
	}

	/** A circle. */
	Svg circle(double x, double y, double radius, String fill, double width, String dashes) {
		out.append("<circle cx=\"").append(number(x)).append("\" cy=\"").append(number(y)).append("\" r=\"").append(number(radius)).append('"');
		return paint(fill, width, dashes);
	}

	/** A rectangle. */
	Svg rect(double x, double y, double width, double height, String fill, double stroke, String dashes) {
		out.append("<rect x=\"").append(number(x)).append("\" y=\"").append(number(y)).append("\" width=\"").append(number(width))
				.append("\" height=\"").append(number(height)).append('"');
		return paint(fill, stroke, dashes);
	}

	/** A path. */
	Svg path(String data, String fill, double width, String dashes) {
		out.append("<path d=\"").append(data).append('"');
		return paint(fill, width, dashes);
	}

	/** What follows until {@link #end} is turned clockwise around a point. */
	Svg turned(double degrees, double x, double y) {
		out.append("<g transform=\"rotate(").append(number(degrees)).append(' ').append(point(x, y)).append(")\">");
		return this;
	}

	/** Ends {@link #turned}. */
	Svg end() {
		out.append("</g>");
		return this;
	}

	/** The finished element. */
	String element() {
		return out + "</svg>";
	}

	/** A coordinate with at most three decimals, the same in every locale. */
	static String number(double value) {
		BigDecimal rounded = BigDecimal.valueOf(value).setScale(3, RoundingMode.HALF_UP).stripTrailingZeros();
		return rounded.signum() == 0 ? "0" : rounded.toPlainString();
	}

	/** Two coordinates. */
	static String point(double x, double y) {
		return number(x) + " " + number(y);
	}

	private Svg paint(String fill, double width, String dashes) {
		out.append(" fill=\"").append(fill).append('"');
		if (width > 0) {
			out.append(" stroke=\"#000000\" stroke-width=\"").append(number(width)).append('"');
		}
		if (!dashes.isEmpty()) {
			out.append(" stroke-dasharray=\"").append(dashes).append('"');
		}
		out.append("/>");
		return this;
	}
}
