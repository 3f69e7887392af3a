package org.girandole.sheets.print.values;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.function.Function;
import org.girandole.physics.fallout.Footprint;
import org.girandole.plan.CheckedPlan;
import org.girandole.plan.Finding;
import org.girandole.plan.Plan;
import org.girandole.plan.PlannedCue;
import org.girandole.plan.fallout.FalloutAreas;
import org.girandole.plan.fallout.FlightMemory;
import org.girandole.plan.rules.Workings;
import org.girandole.plan.rules.distance.AskedDistances;
import org.girandole.plan.rules.distance.SiteInWind;
import org.girandole.plan.rules.distance.WindTable;
import org.girandole.plan.script.Point;
import org.girandole.plan.script.Site;
import org.girandole.plan.stock.Charges;


/**
 * The site from above, to scale.
 *
 * @param spots positions
 * @param outlines audience lines, boundary, protected places
 * @param fallout the largest share first: outlines inside which that share of unburst shells, and of pieces of debris, comes down
 * @param falloutUnknown cues whose fallout could not be computed, and why
 * @param wind where it blows from, if the script says so
 * @param table name of the distance table, or why distances were not looked at
 * @param looked whether distances were looked at
 * @param distances what is asked and what is there
 * @param measures distances to be drawn, so that they can be checked with a ruler
 * @param bears how each position fares in rising wind from where it blows; empty when the script states no wind or nothing is fired
 * @param otherWind whether the wind is another than that of the script
 * @param unchecked what could not be checked, in words
 * @param notices findings about distances
 */
public record SiteMap(String site, List<Spot> spots, List<Outline> outlines, List<Fallout> fallout,
		List<String> falloutUnknown, Optional<Wind> wind, String table, boolean looked,
		List<Distance> distances, List<Measure> measures, Optional<WindTable> bears, boolean otherWind, List<String> unchecked, List<Notice> notices) {
	/** Of the computed flights, this share lies inside of an outline. */
	private static final double SHARE = 0.99;
	/** Those that are drawn. */
	private static final List<Double> SHARES = List.of(SHARE, 0.9, 0.5);
	/** Rules whose findings stand on this sheet. */
	private static final List<String> RULES = List.of("separation", "separation-unchecked", "protect", "fallout", "fallout-unchecked", "wind-limit",
			"position-outside", "position-too-close", "charge-limit", "burst-too-low");

	public SiteMap {
		spots = List.copyOf(spots);
		outlines = List.copyOf(outlines);
		fallout = List.copyOf(fallout);
		falloutUnknown = List.copyOf(falloutUnknown);
		distances = List.copyOf(distances);
		measures = List.copyOf(measures);
		unchecked = List.copyOf(unchecked);
		notices = List.copyOf(notices);
	}

	/**
	 * A position.
	 *
	 * @param askedM the largest number of metres that the table asks from here towards an audience line; empty when none is known
	 * @param calibre the largest calibre fired here, in words; empty when none is known
	 * @param charge net explosive content here
	 * @param unburst how far 99 of 100 unburst shells fall at most from here
	 * @param debris how far 99 of 100 pieces of debris fall at most from here
	 */
	public record Spot(String name, double xM, double yM, OptionalDouble askedM, boolean estimated, String place, long pieces, String calibre, String charge,
			String unburst, String debris) {
	}

	/**
	 * Where a share of what falls comes down.
	 *
	 * @param words the share, such as {@code 99 %}
	 * @param outlines one of unburst shells and one of debris for each effect, place and tilt
	 */
	public record Fallout(String words, List<List<Point>> outlines) {
		public Fallout {
			outlines = outlines.stream().map(List::copyOf).toList();
		}
	}

	/** A distance on the ground from where something is fired to the nearest point of a place, in words as measured on paper. */
	public record Measure(double fromX, double fromY, double toX, double toY, String words) {
		/** Metres on the ground. */
		public double lengthM() {
			return Math.hypot(toX - fromX, toY - fromY);
		}
	}

	/** What an outline is. */
	public enum Kind {
		AUDIENCE, BOUNDARY, PROTECTED
	}

	/**
	 * A line, an area, or a circle around its only point.
	 *
	 * @param points x and y, metres
	 * @param radiusM radius of a circle
	 */
	public record Outline(Kind kind, String name, List<Point> points, OptionalDouble radiusM) {
		public Outline {
			points = List.copyOf(points);
		}
	}

	/** Wind of the script. */
	public record Wind(double fromDeg, String words) {
	}

	/**
	 * One position and one place.
	 *
	 * @param asked metres asked, or that an assessment is needed and why
	 * @param holds whether the number is met
	 * @param basis where the number comes from
	 */
	public record Distance(String position, String place, boolean audience, String found, String asked, boolean holds, String cue, String basis) {
	}

	/** The site of a plan; empty when it has none. */
	public static Optional<SiteMap> of(CheckedPlan checked) {
		return of(checked, false);
	}

	/**
	 * The site of a plan; empty when it has none.
	 *
	 * @param otherWind whether the plan was put into another wind than that of its script
	 */
	public static Optional<SiteMap> of(CheckedPlan checked, boolean otherWind) {
		return checked.plan().script().site().map(site -> of(checked, site, otherWind));
	}

	private static SiteMap of(CheckedPlan checked, Site site, boolean otherWind) {
		Plan plan = checked.plan();
		Workings workings = new Workings(plan, new FlightMemory());
		AskedDistances asked = AskedDistances.of(workings);
		Charges charges = Charges.of(plan);
		FalloutAreas fallout = FalloutAreas.of(plan, workings.shells());
		List<Outline> outlines = new ArrayList<>();
		site.boundary().ifPresent(area -> outlines.add(new Outline(Kind.BOUNDARY, "boundary", area.points(), OptionalDouble.empty())));
		site.audience().forEach(area -> outlines.add(new Outline(Kind.AUDIENCE, area.name(), area.points(), OptionalDouble.empty())));
		site.protectedPlaces().forEach(place -> outlines.add(new Outline(Kind.PROTECTED, place.name(), place.points(),
				place.radiusM().map(OptionalDouble::of).orElse(OptionalDouble.empty()))));
		return new SiteMap(site.label(), site.positions().stream().map(position -> spot(plan, position, asked, charges, fallout)).toList(), outlines,
				SHARES.stream().map(share -> new Fallout(Quantities.plain(share * 100, 0) + " %", outlines(fallout, share))).toList(),
				fallout.unknown().stream().map(unknown -> "cue " + unknown.first().number() + ", " + unknown.first().label() + ": " + unknown.why())
						.toList(),
				site.wind().map(SiteMap::wind),
				asked.table().map(table -> table.name() + ": " + table.title()).orElse(plan.script().show().separation()
						.map(name -> "there is no distance table " + name).orElse("the show names no distance table")),
				asked.table().isPresent(), asked.lines().stream().map(SiteMap::distance).toList(), measures(asked),
				bears(plan), otherWind, checked.findings().stream().filter(SiteInWind::saysUnchecked).map(Finding::message).distinct().toList(),
				Notice.of(checked, finding -> RULES.contains(finding.rule())));
	}

	private static Spot spot(Plan plan, Site.Position position, AskedDistances asked, Charges charges, FalloutAreas fallout) {
		List<AskedDistances.Line> lines = asked.lines().stream().filter(line -> line.audience() && line.position().equals(position.name())).toList();
		Optional<AskedDistances.Line> most = lines.stream().filter(line -> line.asked().metres().isPresent())
				.max((a, b) -> Double.compare(a.asked().metres().getAsDouble(), b.asked().metres().getAsDouble()));
		Charges.Sum sum = charges.positions().get(position.name());
		return new Spot(position.name(), position.at().xM(), position.at().yM(),
				most.map(line -> line.asked().metres()).orElse(OptionalDouble.empty()),
				most.map(line -> !line.asked().estimated().isEmpty()).orElse(false), coordinates(position.at()), sum == null ? 0 : sum.pieces(),
				calibre(plan, position.name()),
				sum == null ? "none" : (sum.complete() ? "" : "at least ") + Quantities.kilograms(sum.kg()),
				reach(position, fallout, area -> Optional.of(area.result().unburst())), reach(position, fallout, area -> area.result().debris()));
	}

	private static String calibre(Plan plan, String position) {
		return plan.cues().stream().filter(cue -> cue.position().equals(position)).flatMap(cue -> cue.effect().calibreM().stream())
				.max(Double::compare).map(Quantities::millimetres).orElse("");
	}

	/** Of each place: from the first and the last position of the site, and from the one that it leaves the least room. */
	private static List<Measure> measures(AskedDistances asked) {
		Map<String, List<AskedDistances.Line>> places = new LinkedHashMap<>();
		asked.lines().forEach(line -> places.computeIfAbsent(line.place(), place -> new ArrayList<>()).add(line));
		List<Measure> measures = new ArrayList<>();
		for (List<AskedDistances.Line> lines : places.values()) {
			Set<AskedDistances.Line> drawn = new LinkedHashSet<>();
			if (lines.get(0).audience()) {
				drawn.add(lines.get(0));
				drawn.add(lines.get(lines.size() - 1));
			}
			lines.stream().min(Comparator.comparingDouble(line -> line.foundM() - line.asked().metres().orElse(0))).ifPresent(drawn::add);
			drawn.forEach(line -> measures.add(new Measure(line.from().x(), line.from().y(), line.to().x(), line.to().y(),
					Quantities.metres(line.foundM()))));
		}
		return measures;
	}

	private static Optional<WindTable> bears(Plan plan) {
		return plan.cues().isEmpty() ? Optional.empty() : plan.script().site().flatMap(Site::wind).map(wind -> WindTable.of(plan, wind.fromDeg()));
	}

	private static List<List<Point>> outlines(FalloutAreas fallout, double share) {
		List<List<Point>> outlines = new ArrayList<>();
		for (FalloutAreas.Area area : fallout.areas()) {
			outline(area.result().unburst(), share).ifPresent(outlines::add);
			area.result().debris().flatMap(debris -> outline(debris, share)).ifPresent(outlines::add);
		}
		return outlines;
	}

	private static Optional<List<Point>> outline(Footprint footprint, double wanted) {
		return footprint.areas().stream().filter(area -> area.share() == wanted).findFirst()
				.map(area -> area.outline().corners().stream().map(corner -> new Point(corner.x(), corner.y())).toList());
	}

	/** The farthest corner of all outlines of a position; says so where a cue of it has none. */
	private static String reach(Site.Position position, FalloutAreas fallout, Function<FalloutAreas.Area, Optional<Footprint>> kind) {
		List<FalloutAreas.Area> here = fallout.areas().stream().filter(area -> area.first().position().equals(position.name())).toList();
		boolean unknown = fallout.unknown().stream().anyMatch(each -> each.first().position().equals(position.name()));
		OptionalDouble farthest = here.stream().flatMap(area -> kind.apply(area).flatMap(footprint -> outline(footprint, SHARE)).stream()).flatMap(List::stream)
				.mapToDouble(point -> Math.hypot(point.xM() - position.at().xM(), point.yM() - position.at().yM())).max();
		if (farthest.isEmpty()) {
			return unknown ? "not known" : "none";
		}
		boolean estimated = here.stream().anyMatch(FalloutAreas.Area::estimated);
		return (unknown ? "at least " : "") + (estimated ? Quantities.ESTIMATED + " " : "") + Quantities.metres(farthest.getAsDouble());
	}

	private static String coordinates(Point at) {
		return "x " + Quantities.metres(at.xM()) + ", y " + Quantities.metres(at.yM())
				+ (at.zM() == 0 ? "" : ", z " + Quantities.metres(at.zM()));
	}

	private static Wind wind(Site.Wind wind) {
		return new Wind(wind.fromDeg(), "from " + Quantities.degrees(wind.fromDeg()) + " at " + Quantities.plain(wind.speedMps(), 1) + " m/s"
				+ wind.gustMps().map(gust -> ", gusts " + Quantities.plain(gust, 1) + " m/s").orElse(""));
	}

	private static Distance distance(AskedDistances.Line line) {
		String mark = line.asked().estimated().isEmpty() ? "" : Quantities.ESTIMATED + " ";
		PlannedCue cue = line.cue();
		return new Distance(line.position(), line.place(), line.audience(), Quantities.metres(line.foundM()),
				line.asked().assessmentNeeded() ? "ASSESSMENT: " + line.asked().assessment().orElse("")
						: mark + Quantities.metres(line.asked().metres().getAsDouble()),
				line.asked().metBy(line.foundM()), cue.number() + ", " + cue.label(),
				line.asked().basis());
	}
}
