package org.girandole.sheets.print.values;

import java.util.stream.Collectors;

import org.girandole.plan.CheckedPlan;
import org.girandole.plan.PlannedSoundtrack;
import org.girandole.plan.script.ShowHeader;

/**
 * What stands on every page of a release.
 *
 * @param show the show's own title
 * @param when date, time and zone as the script says, or that it does not
 * @param slots slots of the controller, such as {@code slot 0} or {@code slots 0, 1}
 * @param stamp the release stamp in its printed form
 * @param toolVersion version of the program that made the sheet
 * @param standing how the show stands
 */
public record Head(String show, String when, String slots, String stamp, String toolVersion, Standing standing) {

	/** The head of all sheets of a plan. */
	public static Head of(CheckedPlan checked, String toolVersion) {
		var plan = checked.plan();
		return new Head(plan.script().show().label(), when(plan.script().show()),
				slots(plan.soundtracks().stream().map(PlannedSoundtrack::slot).map(String::valueOf).collect(Collectors.joining(", ")),
						plan.soundtracks().size()),
				plan.stamp().printed(), toolVersion, Standing.of(checked));
	}

	/** The same head for a sheet that serves one soundtrack alone. */
	public Head inSlot(int slot) {
		return new Head(show, when, slots(String.valueOf(slot), 1), stamp, toolVersion, standing);
	}

	private static String slots(String numbers, int count) {
		return switch (count) {
			case 0 -> "no slot";
			case 1 -> "slot " + numbers;
			default -> "slots " + numbers;
		};
	}

	private static String when(ShowHeader show) {
		if (show.date().isEmpty() && show.time().isEmpty()) {
			return "date " + Quantities.NOT_STATED;
		}
		return show.date().map(Object::toString).orElse("date " + Quantities.NOT_STATED)
				+ show.time().map(time -> ", " + time).orElse("")
				+ show.zone().map(zone -> " (" + zone.getId() + ")").orElse("");
	}
}
