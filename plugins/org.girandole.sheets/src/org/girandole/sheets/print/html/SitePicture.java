package org.girandole.sheets.print.html;

import static org.girandole.sheets.print.html.Svg.SOLID;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;

import org.girandole.plan.script.Point;
import org.girandole.sheets.print.values.SiteMap;
import org.girandole.sheets.print.values.SiteMap.Outline;
import org.girandole.sheets.print.values.SiteMap.Spot;

/**
 * The site from above at a scale of round numbers, +y up. Every kind of line has its own pattern, so that none needs a colour.
 *
 * @param drawing the lines, without words
 * @param words names and where they stand
 * @param scale metres on the ground for one metre of paper
 * @param barM length of the scale bar on the ground, metres
 */
record SitePicture(String drawing, List<Word> words, int scale, int barM, double widthMm, double heightMm) {
	static final String BOUNDARY_DASHES = "5 1.4 0.8 1.4";
	static final String PROTECTED_DASHES = "2 1.2";
	static final String FALLOUT_DASHES = "1.6 0.8";
	static final String ASKED_DASHES = "0.5 1.1";
	/** From the largest share to the smallest. */
	private static final String[] GREYS = {"#f0f0f0", "#e0e0e0", "#cecece"};
	/** Nobody measures shorter lines with a ruler. */
	private static final double SHORTEST_MEASURE_MM = 8;
	/** Where on a line its length stands: past the middle, clear of the positions. */
	private static final double MEASURE_WORD = 0.62;
	private static final double MARGIN_MM = 9;
	private static final double TALLEST_MM = 150;
	private static final double SHORTEST_MM = 60;
	private static final int[] STEPS = {100, 125, 200, 250, 500, 1000};

	/** A name on the drawing: left and top of its box, millimetres. */
	record Word(double xMm, double yMm, String text, boolean big) {
	}

	/** Draws a site as large as the paper allows. */
	static SitePicture of(SiteMap map, double widthMm) {
		Frame frame = Frame.around(map, widthMm);
		Svg svg = new Svg(widthMm, frame.heightMm());
		List<Word> words = new ArrayList<>();
		svg.rect(0.3, 0.3, widthMm - 0.6, frame.heightMm() - 0.6, "#ffffff", 0.4, SOLID);
		// All edges first, then all areas over them: what is left of the edges is that of the whole.
		for (int i = 0; i < map.fallout().size(); i++) {
			fallout(svg, words, frame, map.fallout().get(i), GREYS[Math.min(i, GREYS.length - 1)]);
		}
		map.outlines().forEach(outline -> outline(svg, words, frame, outline));
		for (Spot spot : map.spots()) {
			double x = frame.x(spot.xM());
			double y = frame.y(spot.yM());
			spot.askedM().ifPresent(metres -> svg.circle(x, y, frame.mm(metres), "none", 0.35, ASKED_DASHES));
		}
		for (Spot spot : map.spots()) {
			svg.circle(frame.x(spot.xM()), frame.y(spot.yM()), 1.1, "#000000", 0.35, SOLID);
			words.add(new Word(frame.x(spot.xM()) + 1.2, frame.y(spot.yM()) - 5.4, spot.name(), true));
			if (!spot.calibre().isEmpty()) {
				words.add(new Word(frame.x(spot.xM()) - 2, frame.y(spot.yM()) + 1, spot.calibre().replace(" mm", ""), false));
			}
		}
		map.measures().forEach(measure -> measure(svg, words, frame, measure));
		north(svg, 9, 9);
		words.add(new Word(7.6, 17, "N", true));
		map.wind().ifPresent(wind -> arrow(svg, widthMm - 12, 14, wind.fromDeg() + 180));
		int barM = bar(frame.scale());
		svg.rect(4, frame.heightMm() - 5, frame.mm(barM) / 2, 1.6, "#000000", 0.3, SOLID);
		svg.rect(4 + frame.mm(barM) / 2, frame.heightMm() - 5, frame.mm(barM) / 2, 1.6, "#ffffff", 0.3, SOLID);
		words.add(new Word(4, frame.heightMm() - 9.5, barM + " m", false));
		map.wind().ifPresent(wind -> words.add(new Word(widthMm - 19, 22, "wind", false)));
		return new SitePicture(svg.element(), words, frame.scale(), barM, widthMm, frame.heightMm());
	}

	private static void outline(Svg svg, List<Word> words, Frame frame, Outline outline) {
		Point first = outline.points().get(0);
		if (outline.radiusM().isPresent()) {
			double radius = frame.mm(outline.radiusM().getAsDouble());
			svg.circle(frame.x(first.xM()), frame.y(first.yM()), radius, "#bdbdbd", 0.5, PROTECTED_DASHES);
			words.add(new Word(frame.x(first.xM()) - radius, frame.y(first.yM()) + radius + 0.5, outline.name(), false));
			return;
		}
		String path = open(frame, outline.points());
		switch (outline.kind()) {
			case AUDIENCE -> svg.path(path, "none", 1.6, SOLID);
			case BOUNDARY -> svg.path(path + "Z", "none", 0.4, BOUNDARY_DASHES);
			case PROTECTED -> svg.path(path + "Z", "#bdbdbd", 0.5, PROTECTED_DASHES);
		}
		boolean audience = outline.kind() == SiteMap.Kind.AUDIENCE;
		words.add(new Word(frame.x(first.xM()) + 1.5, frame.y(first.yM()) - (audience ? 5 : -0.8),
				audience ? "audience: " + outline.name() : outline.name(), false));
	}

	/** One share. Its edge is drawn first and its areas over that: what is left of the edges is the edge of the whole. */
	private static void fallout(Svg svg, List<Word> words, Frame frame, SiteMap.Fallout fallout, String grey) {
		fallout.outlines().forEach(area -> svg.path(closed(frame, area), "none", 0.9, FALLOUT_DASHES));
		fallout.outlines().forEach(area -> svg.path(closed(frame, area), grey, 0, SOLID));
		fallout.outlines().stream().flatMap(List::stream).max(Comparator.comparingDouble(Point::yM))
				.ifPresent(top -> words.add(new Word(frame.x(top.xM()) - 3, frame.y(top.yM()) + 0.8, fallout.words(), false)));
	}

	/** A thin line with a bar at both ends, and its length beside the middle. */
	private static void measure(Svg svg, List<Word> words, Frame frame, SiteMap.Measure measure) {
		double x1 = frame.x(measure.fromX());
		double y1 = frame.y(measure.fromY());
		double x2 = frame.x(measure.toX());
		double y2 = frame.y(measure.toY());
		double length = Math.hypot(x2 - x1, y2 - y1);
		if (length < SHORTEST_MEASURE_MM) {
			return;
		}
		svg.line(x1, y1, x2, y2, 0.2, SOLID);
		double barX = (y2 - y1) / length;
		double barY = -(x2 - x1) / length;
		svg.line(x1 - barX, y1 - barY, x1 + barX, y1 + barY, 0.3, SOLID);
		svg.line(x2 - barX, y2 - barY, x2 + barX, y2 + barY, 0.3, SOLID);
		words.add(new Word(x1 + (x2 - x1) * MEASURE_WORD + 0.8, y1 + (y2 - y1) * MEASURE_WORD - 1.5, measure.words(), false));
	}

	/** An arrow up, half of it open, so that nobody takes it for that of the wind. */
	private static void north(Svg svg, double x, double y) {
		svg.path("M" + Svg.point(x, y - 6) + "L" + Svg.point(x - 2.4, y + 6) + "L" + Svg.point(x, y + 3.6) + "Z", "#000000", 0.25, SOLID);
		svg.path("M" + Svg.point(x, y - 6) + "L" + Svg.point(x + 2.4, y + 6) + "L" + Svg.point(x, y + 3.6) + "Z", "#ffffff", 0.25, SOLID);
	}

	private static String closed(Frame frame, List<Point> points) {
		return open(frame, points) + "Z";
	}

	private static String open(Frame frame, List<Point> points) {
		StringBuilder path = new StringBuilder();
		for (Point point : points) {
			path.append(path.isEmpty() ? "M" : "L").append(Svg.point(frame.x(point.xM()), frame.y(point.yM())));
		}
		return path.toString();
	}

	/** An arrow that points where the wind goes, in degrees clockwise from up. */
	private static void arrow(Svg svg, double x, double y, double degrees) {
		svg.turned(degrees, x, y);
		svg.line(x, y + 7, x, y - 7, 0.8, SOLID);
		svg.path("M" + Svg.point(x, y - 9) + "L" + Svg.point(x - 2, y - 4) + "L" + Svg.point(x + 2, y - 4) + "Z", "#000000", 0, SOLID);
		svg.end();
	}

	/** About three centimetres of paper, in round metres. */
	private static int bar(int scale) {
		int wanted = scale * 3 / 100;
		int bar = 1;
		for (int step = 1; step <= wanted; step *= 10) {
			for (int factor : new int[] {1, 2, 5}) {
				if (step * factor <= wanted) {
					bar = step * factor;
				}
			}
		}
		return bar;
	}

	/** From metres on the ground to millimetres of paper. */
	private record Frame(double leftM, double topM, int scale, double heightMm, double widthMm, double groundWidthM) {
		static Frame around(SiteMap map, double widthMm) {
			List<Point> points = new ArrayList<>();
			map.spots().forEach(spot -> points.add(new Point(spot.xM(), spot.yM())));
			map.fallout().forEach(fallout -> fallout.outlines().forEach(points::addAll));
			for (Outline outline : map.outlines()) {
				double radius = outline.radiusM().orElse(0);
				outline.points().forEach(point -> {
					points.add(new Point(point.xM() - radius, point.yM() - radius));
					points.add(new Point(point.xM() + radius, point.yM() + radius));
				});
			}
			double left = points.stream().mapToDouble(Point::xM).min().orElse(0);
			double right = points.stream().mapToDouble(Point::xM).max().orElse(0);
			double bottom = points.stream().mapToDouble(Point::yM).min().orElse(0);
			double top = points.stream().mapToDouble(Point::yM).max().orElse(0);
			int scale = scale(Math.max((right - left) / (widthMm - 2 * MARGIN_MM), (top - bottom) / (TALLEST_MM - 2 * MARGIN_MM)) * 1000);
			double heightMm = Math.max(SHORTEST_MM, (top - bottom) * 1000 / scale + 2 * MARGIN_MM);
			return new Frame(left, top, scale, heightMm, widthMm, right - left);
		}

		/** The next rounder number. */
		private static int scale(double atLeast) {
			for (int decade = 1; decade < 1_000_000; decade *= 10) {
				for (int step : STEPS) {
					if (step * decade >= atLeast) {
						return step * decade;
					}
				}
			}
			throw new IllegalArgumentException("the site is larger than any paper: 1:" + Svg.number(atLeast));
		}

		double mm(double metres) {
			return metres * 1000 / scale;
		}

		double x(double xM) {
			return (widthMm - mm(groundWidthM)) / 2 + mm(xM - leftM);
		}

		double y(double yM) {
			return MARGIN_MM + mm(topM - yM);
		}
	}
}
