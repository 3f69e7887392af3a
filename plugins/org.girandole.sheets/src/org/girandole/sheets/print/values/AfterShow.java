package org.girandole.sheets.print.values;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;

import org.girandole.plan.Plan;
import org.girandole.plan.PlannedCue;

/**
 * What is filled in after the show: for every cue whether it fired, position by position, in the order in which a searcher walks.
 *
 * @param positions only those with cues
 */
public record AfterShow(List<PositionPart> positions) {
	public AfterShow {
		positions = List.copyOf(positions);
	}

	/** The cues of one position, by rack and tube, then by number. */
	public record PositionPart(String position, List<Line> lines) {
		public PositionPart {
			lines = List.copyOf(lines);
		}
	}

	/** One cue. */
	public record Line(int cue, int slot, String what, int pieces, String tube, String pin) {
	}

	/** The form for a plan. */
	public static AfterShow of(Plan plan, List<String> positions) {
		List<PositionPart> parts = new ArrayList<>();
		for (String position : positions) {
			List<Line> lines = plan.cues().stream().filter(cue -> cue.position().equals(position)).sorted(Comparator
					.comparing((PlannedCue cue) -> cue.tube().map(PlannedCue.Tube::rack).orElse("\uFFFF"))
					.thenComparing(cue -> cue.tube().map(PlannedCue.Tube::tube).orElse(0)).thenComparing(PlannedCue::number))
					.map(cue -> new Line(cue.number(), cue.slot(), cue.label(), cue.pieces(), PinWords.tube(cue), PinWords.pin(cue))).toList();
			if (!lines.isEmpty()) {
				parts.add(new PositionPart(position, lines));
			}
		}
		return new AfterShow(parts);
	}
}
