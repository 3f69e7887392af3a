package org.girandole.sheets.print.values;

import java.util.ArrayList;
import java.util.List;

import org.girandole.plan.Plan;
import org.girandole.plan.PlannedCue;
import org.girandole.plan.PlannedSoundtrack;
import org.girandole.plan.Timing;
import org.girandole.plan.Timing.RiseSource;
import org.girandole.plan.Timing.SeenMode;

/**
 * The firing table as people read it.
 *
 * @param slots one part a soundtrack, in slot order
 */
public record FiringRows(List<SlotPart> slots) {
	public FiringRows {
		slots = List.copyOf(slots);
	}

	/** The rows of one soundtrack. */
	public record SlotPart(String soundtrack, int slot, String rate, List<Row> rows) {
		public SlotPart {
			rows = List.copyOf(rows);
		}
	}

	/**
	 * One cue.
	 *
	 * @param timecode label, or that it lies before the timecode
	 * @param fire show time of firing
	 * @param seen show time when it is seen or heard, marked when it rests on an estimate
	 * @param heard whether {@code seen} is when it is heard
	 * @param tolerance worst case
	 */
	public record Row(int cue, String timecode, String fire, String seen, boolean heard, String tolerance, String pin,
			String position, String tube, String what, String note) {
	}

	/** All cues of a plan. */
	public static FiringRows of(Plan plan) {
		List<SlotPart> parts = new ArrayList<>();
		for (PlannedSoundtrack soundtrack : plan.soundtracks()) {
			parts.add(new SlotPart(soundtrack.script().label(), soundtrack.slot(),
					soundtrack.line().map(line -> line.rate().words() + " fps").orElse("timecode " + Quantities.NOT_STATED),
					plan.cues().stream().filter(cue -> cue.soundtrack().equals(soundtrack.name())).map(FiringRows::row).toList()));
		}
		return new FiringRows(parts);
	}

	private static Row row(PlannedCue cue) {
		Timing timing = cue.timing();
		return new Row(cue.number(), cue.timecode().map(Object::toString).orElse("before timecode"),
				Quantities.showTime(timing.fireUs()),
				(timing.riseSource() == RiseSource.ESTIMATED ? Quantities.ESTIMATED + " " : "") + Quantities.showTime(timing.seenUs()),
				timing.mode() == SeenMode.HEARD, "± " + Quantities.milliseconds(timing.toleranceUs()), PinWords.pin(cue), cue.position(),
				PinWords.tube(cue), cue.label() + (cue.pieces() > 1 ? " (chain of " + cue.pieces() + ")" : ""),
				cue.cueName().map(name -> name).orElse(""));
	}
}
