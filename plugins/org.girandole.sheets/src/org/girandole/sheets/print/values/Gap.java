package org.girandole.sheets.print.values;

import java.util.ArrayList;
import java.util.Collection;
import java.util.List;
import java.util.function.Predicate;

import org.girandole.plan.Plan;
import org.girandole.plan.PlannedCue;
import org.girandole.plan.Timing.RiseSource;

/**
 * Something that the plan does not know. As long as there is one, no sheet says that all is well.
 *
 * @param what what is not known
 * @param count of how many cues or things
 * @param of the first of them, so that it can be found
 */
public record Gap(String what, long count, String of) {

	/** Everything that is not known, in the order of its weight for the crew. */
	public static List<Gap> of(Plan plan) {
		List<Gap> gaps = new ArrayList<>();
		cues(gaps, plan, "no tube assigned", cue -> cue.effect().kind().needsTube() && cue.tube().isEmpty());
		cues(gaps, plan, "no pin assigned", cue -> cue.pin().isEmpty());
		cues(gaps, plan, "no timecode label", cue -> cue.timecode().isEmpty());
		cues(gaps, plan, "rise estimated, neither measured nor stated", cue -> cue.timing().riseSource() == RiseSource.ESTIMATED);
		cues(gaps, plan, "height of burst estimated", cue -> cue.burst().filter(PlannedCue.Burst::estimated).isPresent());
		cues(gaps, plan, "expected ohms not known", cue -> cue.pin().isPresent() && cue.circuit().isEmpty());
		cues(gaps, plan, "charge not stated", cue -> cue.effect().chargeKg().isEmpty());
		cues(gaps, plan, "hazard class not stated", cue -> cue.effect().hazardClass().isEmpty());
		cues(gaps, plan, "UN number not stated", cue -> cue.effect().unNumber().isEmpty());
		things(gaps, "soundtrack without a timecode line", plan.soundtracks().stream()
				.filter(soundtrack -> soundtrack.line().isEmpty()).map(soundtrack -> soundtrack.name()).toList());
		things(gaps, "soundtrack of unknown length", plan.soundtracks().stream()
				.filter(soundtrack -> soundtrack.lengthUs().isEmpty()).map(soundtrack -> soundtrack.name()).toList());
		things(gaps, "no site: distances cannot be looked at", plan.script().site().isPresent() ? List.of() : List.of("show"));
		things(gaps, "no cues", plan.cues().isEmpty() ? List.of("show") : List.of());
		return List.copyOf(gaps);
	}

	private static void cues(List<Gap> gaps, Plan plan, String what, Predicate<PlannedCue> missing) {
		things(gaps, what, plan.cues().stream().filter(missing).map(cue -> "cue " + cue.number() + ", " + cue.label()).toList());
	}

	private static void things(List<Gap> gaps, String what, Collection<String> names) {
		if (!names.isEmpty()) {
			gaps.add(new Gap(what, names.size(), names.iterator().next()));
		}
	}
}
