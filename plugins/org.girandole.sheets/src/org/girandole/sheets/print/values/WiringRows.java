package org.girandole.sheets.print.values;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.TreeMap;

import org.girandole.plan.CheckedPlan;
import org.girandole.plan.Plan;
import org.girandole.plan.PlannedCue;
import org.girandole.plan.PlannedCue.Circuit;
import org.girandole.plan.script.Module;
import org.girandole.plan.script.ModuleType;

/**
 * What is wired to one module.
 *
 * @param address what the controller calls it
 * @param positions positions it serves; it stands at the first
 * @param facts type, drive, and limits in words
 * @param pins every pin from 1, free ones included
 * @param known whether the module's type is described, so that free pins can be listed
 * @param shared pins with more than one igniter, and how these are joined
 * @param testCurrent the module's own continuity test in words
 * @param notices findings about this module
 */
public record WiringRows(String module, String address, String type, String positions, List<String> facts, List<PinRow> pins,
		List<SharedPin> shared, boolean known, String testCurrent, List<Notice> notices) {
	public WiringRows {
		facts = List.copyOf(facts);
		pins = List.copyOf(pins);
		shared = List.copyOf(shared);
		notices = List.copyOf(notices);
	}

	/** Pins with at least one igniter. */
	public List<PinRow> used() {
		return pins.stream().filter(pin -> !pin.cues().isEmpty()).toList();
	}

	/** Igniters on all pins, as far as circuits are known. */
	public int igniters() {
		return pins.stream().mapToInt(PinRow::igniters).sum();
	}

	/**
	 * One pin.
	 *
	 * @param cues cues fired by it
	 * @param igniters igniters on the pin
	 * @param lead length one way, or that it is not known
	 * @param ohm expected reading, or that it is not known
	 * @param band smallest and largest expected reading; empty when not known
	 * @param beyond whether the module has no such pin
	 */
	public record PinRow(int pin, List<OnPin> cues, int igniters, String lead, String ohm, String band, boolean beyond) {
		public PinRow {
			cues = List.copyOf(cues);
		}
	}

	/** A cue on a pin. */
	public record OnPin(int cue, int slot, String what, String position, String tube) {
		static OnPin of(PlannedCue cue) {
			return new OnPin(cue.number(), cue.slot(), cue.label(), cue.position(), PinWords.tube(cue));
		}
	}

	/** The wiring of a module. */
	public static WiringRows of(CheckedPlan checked, Module module) {
		Plan plan = checked.plan();
		Optional<ModuleType> type = plan.script().moduleTypes().stream().filter(each -> each.name().equals(module.type())).findFirst();
		TreeMap<Integer, List<PlannedCue>> byPin = new TreeMap<>();
		for (PlannedCue cue : plan.cues()) {
			cue.pin().filter(pin -> pin.module().equals(module.name()))
					.ifPresent(pin -> byPin.computeIfAbsent(pin.pin(), number -> new ArrayList<>()).add(cue));
		}
		int pins = type.map(ModuleType::pins).orElse(0);
		for (int pin = 1; pin <= pins; pin++) {
			byPin.computeIfAbsent(pin, number -> List.of());
		}
		List<PinRow> rows = new ArrayList<>();
		byPin.forEach((pin, cues) -> rows.add(row(pin, cues, type.isPresent() && (pin > pins || pin < 1))));
		return new WiringRows(module.name(), module.address(), module.type(), String.join(", ", module.positions()),
				type.map(WiringRows::facts).orElse(List.of("module type " + module.type() + " is not described")), rows,
				byPin.entrySet().stream().flatMap(pin -> SharedPin.of(plan, pin.getKey(), pin.getValue()).stream()).toList(), type.isPresent(),
				type.flatMap(ModuleType::testA).map(amps -> Quantities.plain(amps * 1000, 1) + " mA").orElse(Quantities.NOT_STATED),
				Notice.of(checked, finding -> finding.subject().names().contains(module.name())));
	}

	private static PinRow row(int pin, List<PlannedCue> cues, boolean beyond) {
		Optional<Circuit> circuit = cues.stream().flatMap(cue -> cue.circuit().stream()).findFirst();
		String unknown = cues.isEmpty() ? "" : "not known";
		return new PinRow(pin, cues.stream().map(OnPin::of).toList(), circuit.map(Circuit::igniters).orElse(cues.size()),
				circuit.map(each -> Quantities.metres(each.leadM())).orElse(unknown),
				circuit.map(each -> Quantities.ohm(each.loopOhm())).orElse(unknown),
				circuit.map(each -> Quantities.ohm(each.loopMinOhm()) + " – " + Quantities.ohm(each.loopMaxOhm())).orElse(""), beyond);
	}

	private static List<String> facts(ModuleType type) {
		List<String> facts = new ArrayList<>();
		facts.add("type " + type.name());
		facts.add(Quantities.count(type.pins(), "pin", "pins"));
		facts.add(type.driveV().map(volts -> "drive " + Quantities.plain(volts, 1) + " V").orElse("drive " + Quantities.NOT_STATED));
		type.ignitersPerPin().ifPresent(most -> facts.add("at most " + Quantities.count(most, "igniter", "igniters") + " a pin"));
		type.longestLeadM().ifPresent(most -> facts.add("longest lead " + Quantities.metres(most)));
		return facts;
	}
}
