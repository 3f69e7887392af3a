package org.girandole.sheets.print.html;

import static org.girandole.sheets.print.html.Svg.SOLID;

import java.awt.geom.Line2D;
import java.awt.geom.Rectangle2D;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;

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
	private static final double SPOT_MM = 1.1;
	/** Half a bar at the end of a length: seen on both sides of a spot, because a rack may stand a little beside its position. */
	private static final double BAR_MM = 1.9;
	private static final double AUDIENCE_MM = 1.6;
	/** Where along a line its words may stand: past the middle first, clear of the positions. */
	private static final double[] ALONG = {0.62, 0.5, 0.75, 0.4, 0.86, 0.3, 0.94, 0.2, 0.1, 0.04};
	private static final int CIRCLE_SIDES = 24;
	/** At most so many points of an edge are tried for its word. */
	private static final int MOST_POINTS = 200;
	private static final double MARGIN_MM = 9;
	private static final double TALLEST_MM = 150;
	private static final double SHORTEST_MM = 60;
	private static final int[] STEPS = {100, 125, 200, 250, 500, 1000};

	/** A name on the drawing: left and top of its box, millimetres. */
	record Word(double xMm, double yMm, String text, boolean big) {
		/** No less than it takes in the fonts of the sheet and of the drawing by itself. */
		double widthMm() {
			return text.codePointCount(0, text.length()) * (big ? 3.3 : 1.57) + 0.4;
		}

		double heightMm() {
			return big ? 5 : 3.2;
		}

		Rectangle2D box() {
			return new Rectangle2D.Double(xMm, yMm, widthMm(), heightMm());
		}
	}

	/** Draws a site as large as the paper allows. */
	static SitePicture of(SiteMap map, double widthMm) {
		Frame frame = Frame.around(map, widthMm);
		Svg svg = new Svg(widthMm, frame.heightMm());
		LabelPlaces words = new LabelPlaces(widthMm, frame.heightMm());
		svg.rect(0.3, 0.3, widthMm - 0.6, frame.heightMm() - 0.6, "#ffffff", 0.4, SOLID);
		// All edges first, then all areas over them: what is left of the edges is that of the whole.
		for (int i = 0; i < map.fallout().size(); i++) {
			fallout(svg, frame, map.fallout().get(i), GREYS[Math.min(i, GREYS.length - 1)]);
		}
		map.outlines().forEach(outline -> outline(svg, words, frame, outline));
		for (Spot spot : map.spots()) {
			double x = frame.x(spot.xM());
			double y = frame.y(spot.yM());
			spot.askedM().ifPresent(metres -> svg.circle(x, y, frame.mm(metres), "none", 0.35, ASKED_DASHES));
		}
		for (Spot spot : map.spots()) {
			svg.circle(frame.x(spot.xM()), frame.y(spot.yM()), SPOT_MM, "#000000", 0.35, SOLID);
			words.spot(frame.x(spot.xM()), frame.y(spot.yM()), SPOT_MM, SPOT_MM);
		}
		List<SiteMap.Measure> measures = map.measures().stream().filter(measure -> frame.mm(measure.lengthM()) >= SHORTEST_MEASURE_MM).toList();
		measures.forEach(measure -> measure(svg, words, frame, measure));
		legend(svg, words, frame, map, widthMm);
		name(svg, words, frame, map, measures);
		return new SitePicture(svg.element(), words.words(), frame.scale(), bar(frame.scale()), widthMm, frame.heightMm());
	}

	/** Arrows and scale bar, which stand in the corners. */
	private static void legend(Svg svg, LabelPlaces words, Frame frame, SiteMap map, double widthMm) {
		north(svg, 9, 9);
		words.spot(9, 9, 3, 6.5);
		words.fixed(new Word(7.3, 16.2, "N", true));
		map.wind().ifPresent(wind -> {
			arrow(svg, widthMm - 12, 14, wind.fromDeg() + 180);
			words.spot(widthMm - 12, 14, 7, 7);
			words.fixed(new Word(widthMm - 16, 23.5, "wind", false));
		});
		int barM = bar(frame.scale());
		double barMm = frame.mm(barM);
		svg.rect(4, frame.heightMm() - 5, barMm / 2, 1.6, "#000000", 0.3, SOLID);
		svg.rect(4 + barMm / 2, frame.heightMm() - 5, barMm / 2, 1.6, "#ffffff", 0.3, SOLID);
		words.spot(4 + barMm / 2, frame.heightMm() - 4.2, barMm / 2, 1);
		words.fixed(new Word(4, frame.heightMm() - 9, barM + " m", false));
	}

	/** The words, when all lines are there: what cannot do without its place first. */
	private static void name(Svg svg, LabelPlaces words, Frame frame, SiteMap map, List<SiteMap.Measure> measures) {
		for (Spot spot : map.spots()) {
			leader(svg, words.beside(frame.x(spot.xM()), frame.y(spot.yM()), SPOT_MM, spot.name(), true, 30, 330, 0, 60, 300, 90, 270, 120, 240));
		}
		// Those that can stand where they are looked for do so, and the others make way.
		List<Spot> crowded = map.spots().stream().filter(spot -> !spot.calibre().isEmpty()
				&& !words.below(frame.x(spot.xM()), frame.y(spot.yM()), SPOT_MM, calibre(spot))).toList();
		crowded.forEach(spot -> leader(svg, words.beside(frame.x(spot.xM()), frame.y(spot.yM()), SPOT_MM, calibre(spot), false, 210, 150, 180, 240, 120,
				270, 90, 300, 60, 0)));
		measures.forEach(measure -> words.along(frame.x(measure.fromX()), frame.y(measure.fromY()), frame.x(measure.toX()), frame.y(measure.toY()), 0.3,
				measure.words(), ALONG));
		map.outlines().forEach(outline -> name(words, frame, outline));
		map.fallout().forEach(fallout -> words.on(fallout.outlines().stream().flatMap(List::stream).sorted(Comparator.comparingDouble(Point::yM).reversed())
				.limit(MOST_POINTS).map(point -> new double[] {frame.x(point.xM()), frame.y(point.yM())}).toList(), fallout.words()));
	}

	private static void leader(Svg svg, Optional<Line2D> leader) {
		leader.ifPresent(line -> svg.line(line.getX1(), line.getY1(), line.getX2(), line.getY2(), 0.12, SOLID));
	}

	private static String calibre(Spot spot) {
		return spot.calibre().replace(" mm", "");
	}

	private static void name(LabelPlaces words, Frame frame, Outline outline) {
		Point first = outline.points().get(0);
		if (outline.kind() == SiteMap.Kind.PROTECTED) {
			double x = outline.points().stream().mapToDouble(point -> frame.x(point.xM())).average().orElseThrow();
			double y = outline.points().stream().mapToDouble(point -> frame.y(point.yM())).average().orElseThrow();
			double reach = outline.radiusM().isPresent() ? frame.mm(outline.radiusM().getAsDouble())
					: outline.points().stream().mapToDouble(point -> Math.abs(frame.y(point.yM()) - y)).max().orElseThrow();
			words.beside(x, y, reach, outline.name(), false, 180, 0, 90, 270, 150, 210, 30, 330);
			return;
		}
		Point second = outline.points().get(Math.min(1, outline.points().size() - 1));
		boolean audience = outline.kind() == SiteMap.Kind.AUDIENCE;
		words.along(frame.x(first.xM()), frame.y(first.yM()), frame.x(second.xM()), frame.y(second.yM()), audience ? AUDIENCE_MM / 2 : 0.2,
				audience ? "audience: " + outline.name() : outline.name(), 0.1, 0.2, 0.3, 0.4, 0.5, 0.6, 0.7, 0.8, 0.9);
	}

	private static void outline(Svg svg, LabelPlaces words, Frame frame, Outline outline) {
		Point first = outline.points().get(0);
		if (outline.radiusM().isPresent()) {
			double radius = frame.mm(outline.radiusM().getAsDouble());
			svg.circle(frame.x(first.xM()), frame.y(first.yM()), radius, "#bdbdbd", 0.5, PROTECTED_DASHES);
			for (int i = 0; i < CIRCLE_SIDES; i++) {
				double from = 2 * Math.PI * i / CIRCLE_SIDES;
				double to = 2 * Math.PI * (i + 1) / CIRCLE_SIDES;
				words.line(frame.x(first.xM()) + radius * StrictMath.sin(from), frame.y(first.yM()) + radius * StrictMath.cos(from),
						frame.x(first.xM()) + radius * StrictMath.sin(to), frame.y(first.yM()) + radius * StrictMath.cos(to));
			}
			return;
		}
		String path = open(frame, outline.points());
		switch (outline.kind()) {
			case AUDIENCE -> svg.path(path, "none", AUDIENCE_MM, SOLID);
			case BOUNDARY -> svg.path(path + "Z", "none", 0.4, BOUNDARY_DASHES);
			case PROTECTED -> svg.path(path + "Z", "#bdbdbd", 0.5, PROTECTED_DASHES);
		}
		int corners = outline.points().size();
		double half = outline.kind() == SiteMap.Kind.AUDIENCE ? AUDIENCE_MM / 2 : 0;
		for (int i = 0; i < (outline.kind() == SiteMap.Kind.AUDIENCE ? corners - 1 : corners); i++) {
			Point from = outline.points().get(i);
			Point to = outline.points().get((i + 1) % corners);
			for (double side : half == 0 ? new double[] {0} : new double[] {-half, half}) {
				words.line(frame.x(from.xM()), frame.y(from.yM()) + side, frame.x(to.xM()), frame.y(to.yM()) + side);
			}
		}
	}

	/** One share. Its edge is drawn first and its areas over that: what is left of the edges is the edge of the whole. */
	private static void fallout(Svg svg, Frame frame, SiteMap.Fallout fallout, String grey) {
		fallout.outlines().forEach(area -> svg.path(closed(frame, area), "none", 0.9, FALLOUT_DASHES));
		fallout.outlines().forEach(area -> svg.path(closed(frame, area), grey, 0, SOLID));
	}

	/** A thin line with a bar at both ends. */
	private static void measure(Svg svg, LabelPlaces words, Frame frame, SiteMap.Measure measure) {
		double x1 = frame.x(measure.fromX());
		double y1 = frame.y(measure.fromY());
		double x2 = frame.x(measure.toX());
		double y2 = frame.y(measure.toY());
		double length = Math.hypot(x2 - x1, y2 - y1);
		svg.line(x1, y1, x2, y2, 0.2, SOLID);
		double barX = BAR_MM * (y2 - y1) / length;
		double barY = -BAR_MM * (x2 - x1) / length;
		svg.line(x1 - barX, y1 - barY, x1 + barX, y1 + barY, 0.3, SOLID);
		svg.line(x2 - barX, y2 - barY, x2 + barX, y2 + barY, 0.3, SOLID);
		words.line(x1, y1, x2, y2);
		words.line(x2 - barX, y2 - barY, x2 + barX, y2 + barY);
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
