package org.girandole.sheets.print.values;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.stream.Collectors;

import org.girandole.plan.Plan;
import org.girandole.plan.script.EffectKind;
import org.girandole.plan.stock.Stock;

/**
 * What leaves the store, against what lies there.
 *
 * @param kinds effects by kind
 * @param igniters igniters by type
 * @param crates what goes to each position
 * @param gear racks and modules
 * @param leads what is cut from the reel
 */
public record PullList(List<KindPart> kinds, List<IgniterLine> igniters, List<Crate> crates, List<Gear> gear, CuttingList leads) {
	public PullList {
		kinds = List.copyOf(kinds);
		igniters = List.copyOf(igniters);
		crates = List.copyOf(crates);
		gear = List.copyOf(gear);
	}

	/** The effects of one kind. */
	public record KindPart(String kind, List<Line> lines) {
		public KindPart {
			lines = List.copyOf(lines);
		}
	}

	/**
	 * One effect.
	 *
	 * @param inStock pieces in stock, or that nobody said
	 * @param missing pieces missing; 0 when there are enough or nobody knows
	 * @param known whether the stock is known
	 * @param lots lots to take it from and how many of each
	 */
	public record Line(String label, String calibre, long needed, String inStock, long missing, boolean known, List<LotLine> lots) {
		public Line {
			lots = List.copyOf(lots);
		}
	}

	/** How many pieces to take of a lot, and how many it has. */
	public record LotLine(String lot, long take, long has) {
		/** Whether the lot has too few. */
		public boolean shortOf() {
			return take > has;
		}
	}

	/**
	 * Igniters of one type.
	 *
	 * @param where how many go to each position, in words
	 */
	public record IgniterLine(String type, int needed, String where) {
	}

	/** The pieces of one position. */
	public record Crate(String position, List<CrateLine> lines) {
		public Crate {
			lines = List.copyOf(lines);
		}

		/** Pieces in the crate. */
		public long pieces() {
			return lines.stream().mapToLong(CrateLine::pieces).sum();
		}
	}

	/** One effect in a crate. */
	public record CrateLine(String label, long pieces) {
	}

	/** A thing that is brought and taken home again. */
	public record Gear(String what, String facts, String position) {
	}

	/** Effects that are short. */
	public long shortLines() {
		return kinds.stream().flatMap(kind -> kind.lines().stream()).filter(line -> line.missing() > 0).count();
	}

	/** Effects of which nobody said what is in stock. */
	public long unknownLines() {
		return kinds.stream().flatMap(kind -> kind.lines().stream()).filter(line -> !line.known()).count();
	}

	/** The pull list of a plan. */
	public static PullList of(Plan plan, List<String> positions) {
		Stock stock = Stock.of(plan);
		Map<EffectKind, List<Line>> byKind = new TreeMap<>();
		stock.effects().forEach(line -> byKind.computeIfAbsent(line.effect().kind(), kind -> new ArrayList<>()).add(line(line)));
		return new PullList(byKind.entrySet().stream().map(entry -> new KindPart(entry.getKey().word(), entry.getValue())).toList(),
				stock.igniters().keySet().stream().map(type -> igniter(stock, type, positions)).toList(),
				crates(plan, positions), gear(plan), CuttingList.of(plan));
	}

	private static IgniterLine igniter(Stock stock, String type, List<String> positions) {
		return new IgniterLine(type.isEmpty() ? "type " + Quantities.NOT_STATED : type, stock.igniters().get(type),
				positions.stream().filter(position -> stock.ignitersAt().getOrDefault(position, Map.of()).containsKey(type))
						.map(position -> position + ": " + stock.ignitersAt().get(position).get(type)).collect(Collectors.joining(", ")));
	}

	private static Line line(Stock.Line line) {
		return new Line(line.effect().label(), Quantities.orNotStated(line.effect().calibreM().map(Quantities::millimetres)), line.needed(),
				Quantities.orNotStated(line.inStock().map(String::valueOf)), line.missing().orElse(0L), line.inStock().isPresent(),
				line.lots().stream().map(lot -> new LotLine(lot.lot().name(), lot.needed(), lot.lot().count())).toList());
	}

	private static List<Crate> crates(Plan plan, List<String> positions) {
		List<Crate> crates = new ArrayList<>();
		for (String position : positions) {
			Map<String, Long> pieces = new LinkedHashMap<>();
			plan.script().effects().forEach(effect -> plan.cues().stream()
					.filter(cue -> cue.position().equals(position) && cue.effect().name().equals(effect.name()))
					.forEach(cue -> pieces.merge(effect.label(), (long) cue.pieces(), Long::sum)));
			if (!pieces.isEmpty()) {
				crates.add(new Crate(position, pieces.entrySet().stream().map(each -> new CrateLine(each.getKey(), each.getValue())).toList()));
			}
		}
		return crates;
	}

	private static List<Gear> gear(Plan plan) {
		List<Gear> gear = new ArrayList<>();
		plan.script().racks().forEach(rack -> gear.add(new Gear("Rack " + rack.name(), rack.rows().stream()
				.map(run -> run.count() + " × " + Quantities.millimetres(run.calibreM())).collect(Collectors.joining(" + ")), rack.position())));
		plan.script().modules().forEach(module -> gear.add(
				new Gear("Module " + module.name(), "address " + module.address() + ", " + module.type(), module.positions().get(0))));
		return gear;
	}
}
