package org.girandole.sheets.print.values;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.Function;

import org.girandole.physics.fallout.Footprint;
import org.girandole.plan.CheckedPlan;
import org.girandole.plan.Plan;
import org.girandole.plan.PlannedCue;
import org.girandole.plan.fallout.FalloutAreas;
import org.girandole.plan.rules.distance.AskedDistances;
import org.girandole.plan.script.Point;
import org.girandole.plan.script.Site;
import org.girandole.plan.stock.Charges;

/**
 * The site from above, to scale.
 *
 * @param spots positions
 * @param outlines audience lines, boundary, protected places
 * @param fallout outlines inside which 99 of 100 unburst shells, and 99 of 100 pieces of debris, come down; one of each for an effect,
 *     place and tilt
 * @param falloutUnknown cues whose fallout could not be computed, and why
 * @param wind where it blows from, if the script says so
 * @param table name of the distance table, or why distances were not looked at
 * @param looked whether distances were looked at
 * @param distances what is asked and what is there
 * @param notices findings about distances
 */
public record SiteMap(String site, List<Spot> spots, List<Outline> outlines, List<List<Point>> fallout,
		List<String> falloutUnknown, Optional<Wind> wind, String table, boolean looked,
		List<Distance> distances, List<Notice> notices) {
	/** Of the computed flights, this share lies inside of an outline. */
	private static final double SHARE = 0.99;
	/** Rules whose findings stand on this sheet. */
	private static final List<String> RULES = List.of("separation", "separation-unchecked", "protect", "fallout", "fallout-unchecked", "wind-limit",
			"position-too-close", "charge-limit", "burst-too-low");

	public SiteMap {
		spots = List.copyOf(spots);
		outlines = List.copyOf(outlines);
		fallout = fallout.stream().map(List::copyOf).toList();
		falloutUnknown = List.copyOf(falloutUnknown);
		distances = List.copyOf(distances);
		notices = List.copyOf(notices);
	}

	/**
	 * A position.
	 *
	 * @param askedM the largest number of metres that the table asks from here towards an audience line; empty when none is known
	 * @param charge net explosive content here
	 * @param unburst how far 99 of 100 unburst shells fall at most from here
	 * @param debris how far 99 of 100 pieces of debris fall at most from here
	 */
	public record Spot(String name, double xM, double yM, OptionalDouble askedM, boolean estimated, String place, long pieces, String charge,
			String unburst, String debris) {
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
		return checked.plan().script().site().map(site -> of(checked, site));
	}

	private static SiteMap of(CheckedPlan checked, Site site) {
		Plan plan = checked.plan();
		AskedDistances asked = AskedDistances.of(plan);
		Charges charges = Charges.of(plan);
		FalloutAreas fallout = FalloutAreas.of(plan);
		List<Outline> outlines = new ArrayList<>();
		site.boundary().ifPresent(area -> outlines.add(new Outline(Kind.BOUNDARY, "boundary", area.points(), OptionalDouble.empty())));
		site.audience().forEach(area -> outlines.add(new Outline(Kind.AUDIENCE, area.name(), area.points(), OptionalDouble.empty())));
		site.protectedPlaces().forEach(place -> outlines.add(new Outline(Kind.PROTECTED, place.name(), place.points(),
				place.radiusM().map(OptionalDouble::of).orElse(OptionalDouble.empty()))));
		return new SiteMap(site.label(), site.positions().stream().map(position -> spot(position, asked, charges, fallout)).toList(), outlines, outlines(fallout),
				fallout.unknown().stream().map(unknown -> "cue " + unknown.first().number() + ", " + unknown.first().label() + ": " + unknown.why())
						.toList(),
				site.wind().map(SiteMap::wind),
				asked.table().map(table -> table.name() + ": " + table.title()).orElse(plan.script().show().separation()
						.map(name -> "there is no distance table " + name).orElse("the show names no distance table")),
				asked.table().isPresent(), asked.lines().stream().map(SiteMap::distance).toList(),
				Notice.of(checked, finding -> RULES.contains(finding.rule())));
	}

	private static Spot spot(Site.Position position, AskedDistances asked, Charges charges, FalloutAreas fallout) {
		List<AskedDistances.Line> lines = asked.lines().stream().filter(line -> line.audience() && line.position().equals(position.name())).toList();
		Optional<AskedDistances.Line> most = lines.stream().filter(line -> line.asked().metres().isPresent())
				.max((a, b) -> Double.compare(a.asked().metres().getAsDouble(), b.asked().metres().getAsDouble()));
		Charges.Sum sum = charges.positions().get(position.name());
		return new Spot(position.name(), position.at().xM(), position.at().yM(),
				most.map(line -> line.asked().metres()).orElse(OptionalDouble.empty()),
				most.map(line -> !line.asked().estimated().isEmpty()).orElse(false), coordinates(position.at()), sum == null ? 0 : sum.pieces(),
				sum == null ? "none" : (sum.complete() ? "" : "at least ") + Quantities.kilograms(sum.kg()),
				reach(position, fallout, area -> Optional.of(area.result().unburst())), reach(position, fallout, area -> area.result().debris()));
	}

	private static List<List<Point>> outlines(FalloutAreas fallout) {
		List<List<Point>> outlines = new ArrayList<>();
		for (FalloutAreas.Area area : fallout.areas()) {
			outline(area.result().unburst()).ifPresent(outlines::add);
			area.result().debris().flatMap(SiteMap::outline).ifPresent(outlines::add);
		}
		return outlines;
	}

	private static Optional<List<Point>> outline(Footprint footprint) {
		return footprint.areas().stream().filter(area -> area.share() == SHARE).findFirst()
				.map(area -> area.outline().corners().stream().map(corner -> new Point(corner.x(), corner.y())).toList());
	}

	/** The farthest corner of all outlines of a position; says so where a cue of it has none. */
	private static String reach(Site.Position position, FalloutAreas fallout, Function<FalloutAreas.Area, Optional<Footprint>> kind) {
		List<FalloutAreas.Area> here = fallout.areas().stream().filter(area -> area.first().position().equals(position.name())).toList();
		boolean unknown = fallout.unknown().stream().anyMatch(each -> each.first().position().equals(position.name()));
		OptionalDouble farthest = here.stream().flatMap(area -> kind.apply(area).flatMap(SiteMap::outline).stream()).flatMap(List::stream)
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
				(line.asked().ruleText().isEmpty() ? "" : line.asked().ruleText() + ": ") + line.asked().citation().text());
	}
}
