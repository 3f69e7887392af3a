package org.girandole.sheets.print.html;

import static org.girandole.sheets.print.html.Svg.SOLID;

import java.util.List;

import org.girandole.sheets.print.values.PositionLoad.TubeLoad;

/**
 * The tubes of a rack seen from behind, each at the angle to which it is to be set, wider the larger its calibre. Loaded tubes are drawn
 * heavy, empty ones dashed; an igniter shows as a dot with its lead, a fuse between the items of a chain as a wavy line.
 */
final class RackPicture {
	private static final double HEIGHT_MM = 25;
	private static final double FLOOR_MM = 21;
	private static final double TUBE_LENGTH_MM = 16;
	private static final double NARROWEST_MM = 3.5;
	/** Width on paper of a tube of no calibre at all, and how much is added for each metre of calibre. */
	private static final double THIN_MM = 2.5;
	private static final double MM_PER_M = 75;
	/** No tube fills more of its column than this, so that neighbours stay apart. */
	private static final double WIDEST_PART = 0.62;

	private RackPicture() {
	}

	/** An SVG element as wide as its tubes, to stand above a table with columns of {@code cellMm}. */
	static String svg(List<TubeLoad> tubes, double cellMm) {
		double widthMm = cellMm * tubes.size();
		Svg svg = new Svg(widthMm, HEIGHT_MM);
		for (int i = 0; i < tubes.size(); i++) {
			tube(svg, tubes.get(i), (i + 0.5) * cellMm, cellMm);
		}
		for (int i = 0; i + 1 < tubes.size(); i++) {
			if (fusedTo(tubes.get(i), tubes.get(i + 1))) {
				fuse(svg, (i + 0.5) * cellMm, cellMm);
			}
		}
		svg.line(0, FLOOR_MM, widthMm, FLOOR_MM, 0.8, SOLID);
		svg.line(0.4, FLOOR_MM, 0.4, HEIGHT_MM, 0.8, SOLID);
		svg.line(widthMm - 0.4, FLOOR_MM, widthMm - 0.4, HEIGHT_MM, 0.8, SOLID);
		return svg.element();
	}

	private static void tube(Svg svg, TubeLoad tube, double centreMm, double cellMm) {
		double widthMm = Math.min(WIDEST_PART * cellMm, Math.max(NARROWEST_MM, MM_PER_M * tube.calibreM() + THIN_MM));
		boolean loaded = !tube.loads().isEmpty();
		double mouthMm = FLOOR_MM - TUBE_LENGTH_MM;
		svg.turned(loaded ? tube.loads().get(0).lean().drawnDeg() : 0, centreMm, FLOOR_MM);
		svg.rect(centreMm - widthMm / 2, mouthMm, widthMm, TUBE_LENGTH_MM, "#ffffff", loaded ? 0.7 : 0.25, loaded ? SOLID : "1 0.8");
		if (loaded) {
			double radiusMm = Math.min(widthMm / 2 - 0.6, 4);
			svg.circle(centreMm, FLOOR_MM - 1 - radiusMm, radiusMm, "#c8c8c8", 0.35, SOLID);
			if (tube.loads().get(0).igniterHere()) {
				svg.circle(centreMm, mouthMm - 2.2, 0.9, "#000000", 0.35, SOLID);
				svg.line(centreMm, mouthMm - 2.2, centreMm, FLOOR_MM - 1 - 2 * radiusMm, 0.35, SOLID);
			}
		}
		svg.end();
	}

	private static boolean fusedTo(TubeLoad left, TubeLoad right) {
		return left.loads().size() == 1 && right.loads().size() == 1 && left.loads().get(0).cue() == right.loads().get(0).cue()
				&& !right.loads().get(0).igniterHere();
	}

	private static void fuse(Svg svg, double fromMm, double cellMm) {
		svg.path("M " + Svg.point(fromMm, FLOOR_MM - TUBE_LENGTH_MM - 1.2) + " q " + Svg.point(cellMm / 4, -2.4) + " " + Svg.point(cellMm / 2, 0)
				+ " t " + Svg.point(cellMm / 2, 0), "none", 0.5, SOLID);
	}
}
