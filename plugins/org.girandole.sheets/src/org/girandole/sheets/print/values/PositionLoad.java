package org.girandole.sheets.print.values;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.TreeMap;

import org.girandole.plan.CheckedPlan;
import org.girandole.plan.Plan;
import org.girandole.plan.PlannedCue;
import org.girandole.plan.script.Effect;
import org.girandole.plan.script.Rack;

/**
 * What one position's crew loads.
 *
 * @param modules modules that stand here
 * @param racks in the order of the script
 * @param ground what stands by itself
 * @param unplaced cues of this position that need a tube and have none here
 * @param notices findings about this position and its things
 */
public record PositionLoad(String position, List<String> modules, List<RackLoad> racks, List<GroundPiece> ground,
		List<Unplaced> unplaced, List<Notice> notices) {
	public PositionLoad {
		modules = List.copyOf(modules);
		racks = List.copyOf(racks);
		ground = List.copyOf(ground);
		unplaced = List.copyOf(unplaced);
		notices = List.copyOf(notices);
	}

	/** Tubes to be loaded at this position. */
	public long loadedTubes() {
		return racks.stream().flatMap(rack -> rack.tubes().stream()).filter(tube -> !tube.loads().isEmpty()).count();
	}

	/**
	 * A rack, seen from behind.
	 *
	 * @param facts size, spacing and tilt in words
	 * @param tubes from the left, numbered from 1
	 */
	public record RackLoad(String name, String facts, boolean fixedFan, List<TubeLoad> tubes) {
		public RackLoad {
			tubes = List.copyOf(tubes);
		}

		/** Numbers of the tubes that stay empty, runs drawn together. */
		public String empty() {
			return Quantities.runs(tubes.stream().filter(tube -> tube.loads().isEmpty()).map(TubeLoad::number).toList());
		}

		/** Whether something goes into this rack. */
		public boolean used() {
			return tubes.stream().anyMatch(tube -> !tube.loads().isEmpty());
		}
	}

	/**
	 * A tube.
	 *
	 * @param calibreM inside diameter, metres
	 * @param loads what goes in: nothing, one thing, or more where the plan has gone wrong or evenings differ
	 */
	public record TubeLoad(int number, double calibreM, List<Load> loads) {
		public TubeLoad {
			loads = List.copyOf(loads);
		}
	}

	/**
	 * What goes into a tube.
	 *
	 * @param chainPart {@code 2 of 8} for an item of a chain, else empty
	 * @param igniterHere whether this tube's item has the igniter; the other items of a chain are lit by the fuse
	 * @param calibre the effect's own calibre in words
	 * @param lot lot to take it from, else empty
	 */
	public record Load(int cue, int slot, String effect, String kind, String calibre, String chainPart, boolean igniterHere, Lean lean,
			String pin, String lot) {
	}

	/**
	 * Something that brings its own tube or needs none.
	 *
	 * @param facts what helps to know it again: calibre, shots, duration
	 */
	public record GroundPiece(int cue, int slot, String what, String kind, String facts, int pieces, Lean lean, String pin, String lot) {
	}

	/** A cue that cannot be loaded from this sheet, and why. */
	public record Unplaced(int cue, String what, String why) {
	}

	/** What is to be loaded at a position. */
	public static PositionLoad of(CheckedPlan checked, String position) {
		Plan plan = checked.plan();
		List<Rack> racks = plan.script().racks().stream().filter(rack -> rack.position().equals(position)).toList();
		List<String> modules = plan.script().modules().stream().filter(module -> module.positions().contains(position))
				.map(module -> module.name()).toList();
		List<String> things = new ArrayList<>(modules);
		racks.forEach(rack -> things.add(rack.name()));
		List<PlannedCue> here = plan.cues().stream().filter(cue -> cue.position().equals(position)).toList();
		List<Unplaced> unplaced = new ArrayList<>();
		here.stream().filter(cue -> cue.effect().kind().needsTube()).forEach(cue -> whyUnplaced(cue, plan).ifPresent(
				why -> unplaced.add(new Unplaced(cue.number(), cue.label(), why))));
		return new PositionLoad(position, modules, racks.stream().map(rack -> rackLoad(plan, rack)).toList(),
				here.stream().filter(cue -> !cue.effect().kind().needsTube()).map(PositionLoad::groundPiece).toList(), unplaced,
				Notice.about(checked, position, things));
	}

	private static Optional<String> whyUnplaced(PlannedCue cue, Plan plan) {
		if (cue.tube().isEmpty()) {
			return Optional.of("no tube assigned");
		}
		PlannedCue.Tube tube = cue.tube().get();
		Optional<Rack> rack = plan.script().racks().stream().filter(each -> each.name().equals(tube.rack())).findFirst();
		if (rack.isEmpty()) {
			return Optional.of("its rack " + tube.rack() + " is not described");
		}
		if (!rack.get().position().equals(cue.position())) {
			return Optional.of("its rack " + tube.rack() + " stands at position " + rack.get().position());
		}
		int last = tube.tube() + cue.pieces() - 1;
		return last > rack.get().tubes()
				? Optional.of("it needs tube " + last + " of rack " + tube.rack() + ", which has " + rack.get().tubes())
				: Optional.empty();
	}

	private static RackLoad rackLoad(Plan plan, Rack rack) {
		TreeMap<Integer, List<Load>> loads = new TreeMap<>();
		for (PlannedCue cue : plan.cues()) {
			cue.tube().filter(tube -> tube.rack().equals(rack.name())).ifPresent(tube -> {
				for (int item = 0; item < cue.pieces(); item++) {
					loads.computeIfAbsent(tube.tube() + item, number -> new ArrayList<>()).add(load(cue, item));
				}
			});
		}
		List<TubeLoad> tubes = new ArrayList<>();
		for (int number = 1; number <= rack.tubes(); number++) {
			tubes.add(new TubeLoad(number, rack.runOf(number).orElseThrow().calibreM(), loads.getOrDefault(number, List.of())));
		}
		return new RackLoad(rack.name(), facts(rack), rack.fixedFan(), tubes);
	}

	private static Load load(PlannedCue cue, int item) {
		boolean first = item == 0;
		return new Load(cue.number(), cue.slot(), cue.effect().label(), cue.effect().kind().word(), calibre(cue.effect()),
				cue.pieces() > 1 ? (item + 1) + " of " + cue.pieces() : "", first, Lean.of(cue.aim()),
				first ? PinWords.pin(cue) : "fused", cue.lot().orElse(""));
	}

	private static GroundPiece groundPiece(PlannedCue cue) {
		Effect effect = cue.effect();
		List<String> facts = new ArrayList<>();
		effect.calibreM().ifPresent(calibre -> facts.add(Quantities.millimetres(calibre)));
		effect.shots().ifPresent(shots -> facts.add(Quantities.count(shots, "shot", "shots")));
		effect.lastsUs().ifPresent(lasts -> facts.add("lasts " + Quantities.waiting(lasts)));
		return new GroundPiece(cue.number(), cue.slot(), cue.label() + (cue.pieces() > 1 ? " (chain of " + cue.pieces() + ")" : ""),
				effect.kind().word(), String.join(", ", facts), cue.pieces(), Lean.of(cue.aim()), PinWords.pin(cue),
				cue.lot().orElse(""));
	}

	private static String calibre(Effect effect) {
		return Quantities.orNotStated(effect.calibreM().map(Quantities::millimetres));
	}

	private static String facts(Rack rack) {
		List<String> facts = new ArrayList<>();
		facts.add(String.join(" + ", rack.rows().stream()
				.map(run -> run.count() + " × " + Quantities.millimetres(run.calibreM())).toList()));
		facts.add(rack.spacingM().map(spacing -> Quantities.millimetres(spacing) + " centre to centre")
				.orElse("spacing " + Quantities.NOT_STATED));
		facts.add(rack.fixedFan() ? "fixed fan" : tilt(rack));
		return String.join(", ", facts);
	}

	private static String tilt(Rack rack) {
		return rack.tilt().fromDeg() == rack.tilt().toDeg() && rack.tilt().fromDeg() == 0 ? "tubes stand upright" : "tubes can be tilted";
	}
}
