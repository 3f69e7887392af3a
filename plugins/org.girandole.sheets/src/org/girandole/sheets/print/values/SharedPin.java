package org.girandole.sheets.print.values;

import java.util.List;
import java.util.Optional;

import org.girandole.plan.Plan;
import org.girandole.plan.PlannedCue;
import org.girandole.plan.script.FiringSystem;
import org.girandole.plan.script.FiringSystem.Join;

/**
 * Several igniters on one pin and how they are joined.
 *
 * @param join how; empty when the script describes no firing system, or the cues do not fire together so that they cannot be joined
 * @param words the same for a person with wire in hand
 * @param igniters in firing order
 */
public record SharedPin(int pin, Optional<Join> join, String words, List<WiringRows.OnPin> igniters) {
	public SharedPin {
		igniters = List.copyOf(igniters);
	}

	/** How the cues of one pin are joined; empty for a pin with a single igniter or none. */
	static Optional<SharedPin> of(Plan plan, int pin, List<PlannedCue> cues) {
		if (cues.size() < 2) {
			return Optional.empty();
		}
		boolean together = cues.stream().allMatch(cue -> cue.slot() == cues.get(0).slot()
				&& cue.timing().fireUs() == cues.get(0).timing().fireUs());
		Optional<Join> join = plan.script().firingSystem().map(FiringSystem::join).filter(how -> together);
		return Optional.of(new SharedPin(pin, join, words(join, together, cues.size()), cues.stream().map(WiringRows.OnPin::of).toList()));
	}

	private static String words(Optional<Join> join, boolean together, int igniters) {
		if (!together) {
			return "NOT JOINED: these cues do not fire together, so they cannot share a pin. Stop and ask.";
		}
		return join.map(how -> switch (how) {
			case SERIES -> igniters + " igniters in SERIES: one loop through all of them, one after the other. One bad joint and none fires.";
			case PARALLEL -> igniters + " igniters in PARALLEL: each of them across both wires. The meter shows them all together and may not "
					+ "notice that one is missing.";
		}).orElse("How they are joined is " + Quantities.NOT_STATED + ". Stop and ask.");
	}
}
