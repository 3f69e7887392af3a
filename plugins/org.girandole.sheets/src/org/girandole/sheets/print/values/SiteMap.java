package org.girandole.sheets.print.values;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

import org.girandole.plan.CheckedPlan;
import org.girandole.plan.Plan;
import org.girandole.plan.PlannedCue;
import org.girandole.plan.rules.distance.AskedDistances;
import org.girandole.plan.script.Point;
import org.girandole.plan.script.Site;
import org.girandole.plan.stock.Charges;

/**
 * The site from above, to scale.
 *
 * @param spots positions
 * @param outlines audience lines, boundary, protected places
 * @param wind where it blows from, if the script says so
 * @param table name of the distance table, or why distances were not looked at
 * @param looked whether distances were looked at
 * @param distances what is asked and what is there
 * @param notices findings about distances
 */
public record SiteMap(String site, List<Spot> spots, List<Outline> outlines, Optional<Wind> wind, String table, boolean looked,
		List<Distance> distances, List<Notice> notices) {
	/** Rules whose findings stand on this sheet. */
	private static final List<String> RULES = List.of("separation", "separation-unchecked", "protect", "fallout", "wind-limit",
			"position-too-close", "charge-limit", "burst-too-low");

	public SiteMap {
		spots = List.copyOf(spots);
		outlines = List.copyOf(outlines);
		distances = List.copyOf(distances);
		notices = List.copyOf(notices);
	}

	/**
	 * A position.
	 *
	 * @param askedM the largest number of metres that the table asks from here towards an audience line; empty when none is known
	 * @param charge net explosive content here
	 */
	public record Spot(String name, double xM, double yM, OptionalDouble askedM, boolean estimated, String place, long pieces, String charge) {
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
		List<Outline> outlines = new ArrayList<>();
		site.boundary().ifPresent(area -> outlines.add(new Outline(Kind.BOUNDARY, "boundary", area.points(), OptionalDouble.empty())));
		site.audience().forEach(area -> outlines.add(new Outline(Kind.AUDIENCE, area.name(), area.points(), OptionalDouble.empty())));
		site.protectedPlaces().forEach(place -> outlines.add(new Outline(Kind.PROTECTED, place.name(), place.points(),
				place.radiusM().map(OptionalDouble::of).orElse(OptionalDouble.empty()))));
		return new SiteMap(site.label(), site.positions().stream().map(position -> spot(position, asked, charges)).toList(), outlines,
				site.wind().map(SiteMap::wind),
				asked.table().map(table -> table.name() + ": " + table.title()).orElse(plan.script().show().separation()
						.map(name -> "there is no distance table " + name).orElse("the show names no distance table")),
				asked.table().isPresent(), asked.lines().stream().map(SiteMap::distance).toList(),
				Notice.of(checked, finding -> RULES.contains(finding.rule())));
	}

	private static Spot spot(Site.Position position, AskedDistances asked, Charges charges) {
		List<AskedDistances.Line> lines = asked.lines().stream().filter(line -> line.audience() && line.position().equals(position.name())).toList();
		Optional<AskedDistances.Line> most = lines.stream().filter(line -> line.asked().metres().isPresent())
				.max((a, b) -> Double.compare(a.asked().metres().getAsDouble(), b.asked().metres().getAsDouble()));
		Charges.Sum sum = charges.positions().get(position.name());
		return new Spot(position.name(), position.at().xM(), position.at().yM(),
				most.map(line -> line.asked().metres()).orElse(OptionalDouble.empty()),
				most.map(line -> !line.asked().estimated().isEmpty()).orElse(false), coordinates(position.at()), sum == null ? 0 : sum.pieces(),
				sum == null ? "none" : (sum.complete() ? "" : "at least ") + Quantities.kilograms(sum.kg()));
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
