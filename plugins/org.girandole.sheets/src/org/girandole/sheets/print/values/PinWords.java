package org.girandole.sheets.print.values;

import java.util.Optional;

import org.girandole.plan.PlannedCue;

/** How pins and tubes are named on every sheet. */
final class PinWords {
	static final String NO_PIN = "NO PIN";
	static final String NO_TUBE = "NO TUBE";

	private PinWords() {
	}

	/** {@code M1 · 12}, or that there is none. */
	static String pin(PlannedCue cue) {
		return cue.pin().map(pin -> pin.module() + " · " + pin.pin()).orElse(NO_PIN);
	}

	/** {@code R1 · 3}, {@code R1 · 3–10} for a chain, {@code ground} for what stands by itself. */
	static String tube(PlannedCue cue) {
		if (!cue.effect().kind().needsTube()) {
			return "ground";
		}
		return cue.tube().map(tube -> tube.rack() + " · " + tube.tube() + lastTube(cue, tube).map(last -> "–" + last).orElse(""))
				.orElse(NO_TUBE);
	}

	private static Optional<Integer> lastTube(PlannedCue cue, PlannedCue.Tube tube) {
		return cue.pieces() > 1 ? Optional.of(tube.tube() + cue.pieces() - 1) : Optional.empty();
	}
}
