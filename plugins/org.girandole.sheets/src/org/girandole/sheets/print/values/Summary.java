package org.girandole.sheets.print.values;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

import org.girandole.plan.CheckedPlan;
import org.girandole.plan.Plan;
import org.girandole.plan.PlannedCue;
import org.girandole.plan.PlannedSoundtrack;
import org.girandole.plan.Severity;
import org.girandole.plan.script.ShowScript;
import org.girandole.timecode.TimecodeLine;

/**
 * The first sheet: what the show is, how it stands, what was agreed.
 *
 * @param facts names and values, in the order printed
 * @param tracks one row a soundtrack
 * @param errors open errors
 * @param warnings open warnings
 * @param notes open findings that are neither
 * @param agreed waived findings
 */
public record Summary(List<Fact> facts, List<Track> tracks, List<Notice> errors, List<Notice> warnings, List<Notice> notes,
		List<Notice> agreed) {
	public Summary {
		facts = List.copyOf(facts);
		tracks = List.copyOf(tracks);
		errors = List.copyOf(errors);
		warnings = List.copyOf(warnings);
		notes = List.copyOf(notes);
		agreed = List.copyOf(agreed);
	}

	/** A name and its value. */
	public record Fact(String name, String value) {
	}

	/** A soundtrack in its slot. */
	public record Track(int slot, String name, String rate, String start, String firstNote, String length, long cues, String firstFire,
			String lastFire) {
	}

	/** The summary of a plan. */
	public static Summary of(CheckedPlan checked) {
		Plan plan = checked.plan();
		return new Summary(facts(plan), plan.soundtracks().stream().map(soundtrack -> track(plan, soundtrack)).toList(),
				open(checked, Severity.ERROR), open(checked, Severity.WARNING), open(checked, Severity.INFO),
				Notice.of(checked, finding -> finding.waived()));
	}

	private static List<Notice> open(CheckedPlan checked, Severity severity) {
		return Notice.of(checked, finding -> finding.severity() == severity && !finding.waived());
	}

	private static List<Fact> facts(Plan plan) {
		ShowScript script = plan.script();
		List<Fact> facts = new ArrayList<>();
		facts.add(new Fact("Site", script.site().map(site -> site.label()).orElse(Quantities.NOT_STATED)));
		facts.add(new Fact("Firing system", script.firingSystem().map(system -> system.name()).orElse(Quantities.NOT_STATED)));
		facts.add(new Fact("Bursts within",
				script.show().syncWithinUs().map(Quantities::milliseconds).orElse("limit " + Quantities.NOT_STATED)));
		facts.add(new Fact("Distances by", Quantities.orNotStated(script.show().separation())));
		facts.add(new Fact("Cues", String.valueOf(plan.cues().size())));
		facts.add(new Fact("Pieces", String.valueOf(plan.cues().stream().mapToLong(PlannedCue::pieces).sum())));
		facts.add(new Fact("Positions in use", String.valueOf(plan.cues().stream().map(PlannedCue::position).distinct().count())));
		facts.add(new Fact("Pins in use", plan.cues().stream().flatMap(cue -> cue.pin().stream())
				.map(pin -> pin.module() + "\0" + pin.pin()).distinct().count() + " on "
				+ Quantities.count(plan.cues().stream().flatMap(cue -> cue.pin().stream()).map(PlannedCue.Pin::module).distinct().count(),
						"module", "modules")));
		return facts;
	}

	private static Track track(Plan plan, PlannedSoundtrack soundtrack) {
		List<PlannedCue> cues = plan.cues().stream().filter(cue -> cue.soundtrack().equals(soundtrack.name())).toList();
		Optional<TimecodeLine> line = soundtrack.line();
		return new Track(soundtrack.slot(), soundtrack.script().label(),
				line.map(each -> each.rate().words() + " fps").orElse(Quantities.NOT_STATED),
				line.map(each -> each.start().toString()).orElse(Quantities.NOT_STATED),
				line.map(each -> each.firstNote().toString()).orElse(Quantities.NOT_STATED),
				soundtrack.lengthUs().map(Quantities::showTime).orElse(Quantities.NOT_STATED), cues.size(),
				cues.stream().map(cue -> cue.timing().fireUs()).min(Long::compare).map(Quantities::showTime).orElse("none"),
				cues.stream().map(cue -> cue.timing().fireUs()).max(Long::compare).map(Quantities::showTime).orElse("none"));
	}
}
