package org.girandole.sheets.print.html;

import static org.girandole.sheets.print.html.Svg.SOLID;

import org.girandole.plan.script.FiringSystem.Join;

/**
 * Igniters that share a pin, as a circuit: the pin's two terminals at the left, the lead, and each igniter as a circle with its bridge
 * wire. A dot is a joint.
 */
final class JoinPicture {
	/** Room for terminals and lead before the first igniter. */
	static final double LEAD_MM = 26;
	private static final double HEIGHT_MM = 15;
	private static final double UPPER_MM = 3;
	private static final double LOWER_MM = 12;
	private static final double WIRE = 0.45;
	private static final double LARGEST_MM = 2.6;
	private static final double LARGEST_PART = 0.3;

	private JoinPicture() {
	}

	/** An SVG element whose igniters stand in the middle of columns of {@code cellMm}, the first of which begins at {@link #LEAD_MM}. */
	static String svg(Join join, int igniters, double cellMm) {
		Svg svg = new Svg(LEAD_MM + cellMm * igniters, HEIGHT_MM);
		terminal(svg, UPPER_MM);
		terminal(svg, LOWER_MM);
		// The lead is one piece of twin wire, so its two wires are drawn tied together.
		svg.rect(8, UPPER_MM - 1, 10, LOWER_MM - UPPER_MM + 2, "none", 0.25, "1 0.8");
		double radiusMm = Math.min(LARGEST_MM, LARGEST_PART * cellMm);
		double lastMm = LEAD_MM + cellMm * (igniters - 0.5);
		if (join == Join.SERIES) {
			svg.line(4, UPPER_MM, lastMm + cellMm / 2 - 1, UPPER_MM, WIRE, SOLID);
			svg.line(lastMm + cellMm / 2 - 1, UPPER_MM, lastMm + cellMm / 2 - 1, LOWER_MM, WIRE, SOLID);
			svg.line(4, LOWER_MM, lastMm + cellMm / 2 - 1, LOWER_MM, WIRE, SOLID);
			for (int i = 0; i < igniters; i++) {
				igniter(svg, LEAD_MM + cellMm * (i + 0.5), UPPER_MM, radiusMm, 0);
				if (i > 0) {
					joint(svg, LEAD_MM + cellMm * i, UPPER_MM);
				}
			}
		} else {
			svg.line(4, UPPER_MM, lastMm, UPPER_MM, WIRE, SOLID);
			svg.line(4, LOWER_MM, lastMm, LOWER_MM, WIRE, SOLID);
			for (int i = 0; i < igniters; i++) {
				double x = LEAD_MM + cellMm * (i + 0.5);
				svg.line(x, UPPER_MM, x, LOWER_MM, WIRE, SOLID);
				igniter(svg, x, (UPPER_MM + LOWER_MM) / 2, radiusMm, 90);
				joint(svg, x, UPPER_MM);
				joint(svg, x, LOWER_MM);
			}
		}
		return svg.element();
	}

	private static void terminal(Svg svg, double y) {
		svg.circle(3, y, 1.1, "#ffffff", 0.7, SOLID);
	}

	private static void joint(Svg svg, double x, double y) {
		svg.circle(x, y, 0.9, "#000000", 0, SOLID);
	}

	private static void igniter(Svg svg, double x, double y, double radiusMm, double turnedDeg) {
		svg.circle(x, y, radiusMm, "#ffffff", 0.6, SOLID);
		double step = radiusMm / 3;
		svg.turned(turnedDeg, x, y);
		svg.path("M " + Svg.point(x - radiusMm, y) + " l " + Svg.point(step, 0) + " l " + Svg.point(step, -step) + " l "
				+ Svg.point(2 * step, 2 * step) + " l " + Svg.point(step, -step) + " l " + Svg.point(step, 0), "none", 0.35, SOLID);
		svg.end();
	}
}
