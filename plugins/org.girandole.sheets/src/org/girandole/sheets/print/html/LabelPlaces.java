package org.girandole.sheets.print.html;

import java.awt.geom.Line2D;
import java.awt.geom.Rectangle2D;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * Finds places for the words of a drawing: of those that are offered for a word, in the order of preference, the first that meets nothing; when
 * all meet something, the one that meets least. All lines must be known before the first word is placed. The same drawing gives the same places.
 */
final class LabelPlaces {
	private static final double OFF_THE_SHEET = 1e6;
	private static final double ON_A_WORD = 1e4;
	private static final double ON_A_SPOT = 1e3;
	private static final double ON_A_LINE = 1e2;
	private static final int[] ALL_ROUND = {0, 180, 30, 330, 150, 210, 60, 300, 120, 240, 90, 270, 15, 345, 165, 195, 45, 315, 135, 225, 75, 285, 105, 255};
	/** Between a word and the line or spot beside it. */
	private static final double GAP_MM = 0.5;

	private final double widthMm;
	private final double heightMm;
	private final List<Line2D> lines = new ArrayList<>();
	private final List<Rectangle2D> spots = new ArrayList<>();
	private final List<SitePicture.Word> words = new ArrayList<>();

	LabelPlaces(double widthMm, double heightMm) {
		this.widthMm = widthMm;
		this.heightMm = heightMm;
	}

	/** A line that no word may stand on. */
	void line(double x1, double y1, double x2, double y2) {
		lines.add(new Line2D.Double(x1, y1, x2, y2));
	}

	/** A place that no word may stand on. */
	void spot(double xMm, double yMm, double halfWidthMm, double halfHeightMm) {
		spots.add(new Rectangle2D.Double(xMm - halfWidthMm, yMm - halfHeightMm, 2 * halfWidthMm, 2 * halfHeightMm));
	}

	/** A word that stands where it stands. */
	void fixed(SitePicture.Word word) {
		words.add(word);
	}

	/** The words in the order in which they were placed. */
	List<SitePicture.Word> words() {
		return List.copyOf(words);
	}

	/**
	 * Beside a point: at the angles given, in degrees clockwise from up, and then all round farther away.
	 *
	 * @return the line that leads from the point to the word, when the word had to stand away from it
	 */
	Optional<Line2D> beside(double xMm, double yMm, double radiusMm, String text, boolean big, int... degrees) {
		List<Offer> offers = new ArrayList<>();
		for (double away : new double[] {0, 1.5, 3, 5, 8, 12, 17, 23}) {
			for (int degree : away == 0 ? degrees : ALL_ROUND) {
				SitePicture.Word word = offered(xMm, yMm, StrictMath.sin(Math.toRadians(degree)), -StrictMath.cos(Math.toRadians(degree)), radiusMm + away,
						text, big);
				offers.add(new Offer(word, away == 0 ? Optional.empty() : Optional.of(leader(xMm, yMm, word.box()))));
			}
		}
		return place(offers).leader();
	}

	private static Line2D leader(double xMm, double yMm, Rectangle2D box) {
		return new Line2D.Double(xMm, yMm, Math.max(box.getMinX(), Math.min(box.getMaxX(), xMm)), Math.max(box.getMinY(), Math.min(box.getMaxY(), yMm)));
	}

	/** Straight below a point, if that meets nothing. */
	boolean below(double xMm, double yMm, double radiusMm, String text) {
		SitePicture.Word word = offered(xMm, yMm, 0, 1, radiusMm, text, false);
		boolean free = meets(word.box()) == 0;
		if (free) {
			words.add(word);
		}
		return free;
	}

	/** Along a line on either side of it, at shares of its length; the left of its direction first. */
	void along(double x1, double y1, double x2, double y2, double halfStrokeMm, String text, double... shares) {
		double length = StrictMath.hypot(x2 - x1, y2 - y1);
		double east = length == 0 ? 0 : (y2 - y1) / length;
		double down = length == 0 ? 1 : (x1 - x2) / length;
		List<Offer> offers = new ArrayList<>();
		for (double away : new double[] {0, 2, 4}) {
			for (double share : shares) {
				for (int side : new int[] {1, -1}) {
					offers.add(Offer.of(offered(x1 + (x2 - x1) * share, y1 + (y2 - y1) * share, side * east, side * down,
							halfStrokeMm + away, text, false)));
				}
			}
		}
		place(offers);
	}

	/** On one of the points, the first that is free; without points there is no word. */
	void on(List<double[]> points, String text) {
		if (points.isEmpty()) {
			return;
		}
		place(points.stream().map(point -> {
			SitePicture.Word word = new SitePicture.Word(0, 0, text, false);
			return Offer.of(new SitePicture.Word(point[0] - word.widthMm() / 2, point[1] - word.heightMm() / 2, text, false));
		}).toList());
	}

	/** The word on the side of the point that a direction of length one leads to, so far that it clears {@code awayMm}. */
	private static SitePicture.Word offered(double xMm, double yMm, double east, double down, double awayMm, String text, boolean big) {
		SitePicture.Word word = new SitePicture.Word(0, 0, text, big);
		double off = awayMm + GAP_MM + Math.abs(east) * word.widthMm() / 2 + Math.abs(down) * word.heightMm() / 2;
		return new SitePicture.Word(xMm + east * off - word.widthMm() / 2, yMm + down * off - word.heightMm() / 2, text, big);
	}

	private Offer place(List<Offer> offers) {
		Offer best = offers.get(0);
		double least = Double.POSITIVE_INFINITY;
		for (Offer offer : offers) {
			double meets = meets(offer.word().box()) + offer.leader().map(this::meets).orElse(0.0);
			if (meets < least) {
				best = offer;
				least = meets;
			}
		}
		words.add(best.word());
		return best;
	}

	/** The spot that it leads from does not count. */
	private double meets(Line2D leader) {
		return ON_A_LINE * words.stream().filter(word -> word.box().intersectsLine(leader)).count()
				+ ON_A_LINE / 2 * spots.stream().filter(spot -> spot.intersectsLine(leader) && !spot.contains(leader.getP1())).count();
	}

	private double meets(Rectangle2D box) {
		double sum = new Rectangle2D.Double(1, 1, widthMm - 2, heightMm - 2).contains(box) ? 0 : OFF_THE_SHEET;
		sum += ON_A_WORD * words.stream().filter(word -> word.box().intersects(box)).count();
		sum += ON_A_SPOT * spots.stream().filter(spot -> spot.intersects(box)).count();
		return sum + ON_A_LINE * lines.stream().filter(line -> box.intersectsLine(line)).count();
	}

	/** A place for a word, and the line that leads to it. */
	private record Offer(SitePicture.Word word, Optional<Line2D> leader) {
		static Offer of(SitePicture.Word word) {
			return new Offer(word, Optional.empty());
		}
	}
}
