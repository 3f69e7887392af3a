package org.girandole.sheets.print.values;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;

import org.girandole.plan.Plan;
import org.girandole.plan.PlannedCue.Pin;
import org.girandole.plan.script.Wire;
import org.girandole.plan.stock.Leads;

/**
 * The leads to cut, in words.
 *
 * @param wire the wire's name and gauge, or that nobody stated it
 * @param total leads and metres of the whole show
 * @param missing what is not counted because the plan does not know it; empty when everything is
 * @param lines by position, the longest lead first
 * @param sums one for each position
 */
public record CuttingList(String wire, String total, String missing, List<Line> lines, List<Sum> sums) {
	public CuttingList {
		lines = List.copyOf(lines);
		sums = List.copyOf(sums);
	}

	/**
	 * Leads of one length for one position.
	 *
	 * @param pins the pins they are for, by module
	 * @param wire metres for all of them
	 */
	public record Line(String position, String length, int leads, String pins, String wire) {
	}

	/** The leads of one position. */
	public record Sum(String position, int leads, String wire) {
	}

	/** The cutting list of a plan. */
	public static CuttingList of(Plan plan) {
		Leads leads = Leads.of(plan);
		List<Line> lines = new ArrayList<>();
		List<Sum> sums = new ArrayList<>();
		for (Leads.AtPosition at : leads.positions()) {
			at.cuts().forEach(cut -> lines.add(new Line(at.position(), cut.lengthM() + " m", cut.pins().size(), pins(cut.pins()),
					cut.totalM() + " m")));
			if (at.count() > 0) {
				sums.add(new Sum(at.position(), at.count(), at.totalM() + " m"));
			}
		}
		return new CuttingList(wire(plan, leads.wire()), (leads.complete() ? "" : "at least ") + Quantities.count(leads.count(), "lead", "leads")
				+ ", " + leads.totalM() + " m of wire", missing(leads), lines, sums);
	}

	private static String wire(Plan plan, Optional<String> name) {
		Optional<Wire> described = name.flatMap(wanted -> plan.script().wires().stream().filter(wire -> wire.name().equals(wanted)).findFirst());
		return name.map(known -> known + described.flatMap(CuttingList::size).map(size -> ", " + size).orElse(""))
				.orElse(Quantities.NOT_STATED);
	}

	private static Optional<String> size(Wire wire) {
		return wire.awg().map(gauge -> gauge + " AWG").or(() -> wire.areaMm2().map(area -> Quantities.plain(area, 3) + " mm²"));
	}

	private static String missing(Leads leads) {
		List<String> missing = new ArrayList<>();
		if (leads.unknown() > 0) {
			missing.add("No length is known for the " + (leads.unknown() == 1 ? "lead" : "leads") + " of " + pins(leads.positions().stream()
					.flatMap(at -> at.unknown().stream()).toList()) + ".");
		}
		if (leads.withoutPin() > 0) {
			missing.add(Quantities.count(leads.withoutPin(), "igniter has", "igniters have") + " no pin, and so no lead.");
		}
		return String.join(" ", missing);
	}

	private static String pins(List<Pin> pins) {
		Map<String, List<Integer>> byModule = new LinkedHashMap<>();
		pins.forEach(pin -> byModule.computeIfAbsent(pin.module(), module -> new ArrayList<>()).add(pin.pin()));
		return byModule.entrySet().stream()
				.map(module -> module.getKey() + " · " + Quantities.runs(module.getValue().stream().sorted().toList()))
				.collect(Collectors.joining("; "));
	}
}
