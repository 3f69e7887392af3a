package org.girandole.sheets.print.values;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

import org.girandole.plan.Plan;
import org.girandole.plan.PlannedCue;
import org.girandole.plan.PlannedSoundtrack;
import org.girandole.plan.Times;
import org.girandole.plan.rehearse.CueOutcome.End;
import org.girandole.plan.rehearse.ImpossibleNight;
import org.girandole.plan.rehearse.OwnClock;
import org.girandole.plan.rehearse.Rehearsals;
import org.girandole.plan.rehearse.Rehearsed;
import org.girandole.plan.script.FiringSystem;
import org.girandole.plan.script.Rehearsal;

/**
 * What the shooter knows beforehand about a night that goes wrong.
 *
 * @param lock how long the controller takes to lock, in words
 * @param loss how long it takes to say that code is gone
 * @param holdover how long its own clock is good enough
 * @param late what it does with a cue that it finds overdue
 * @param nights what came of each rehearsal of the script
 */
public record ShooterRows(String soundtrack, int slot, String lock, String loss, String holdover, String late, List<Part> parts,
		List<String> nights) {
	private static final long SECOND_US = 1_000_000;

	public ShooterRows {
		parts = List.copyOf(parts);
		nights = List.copyOf(nights);
	}

	/**
	 * One section.
	 *
	 * @param mean cues that a released second costs on average
	 * @param most what it costs at the worst, and when
	 * @param alone how far off the controller is at the section's end when code is lost at its beginning
	 */
	public record Part(String name, String from, String to, int cues, String mean, String most, String alone, String holds) {
	}

	/** The rows of one soundtrack. */
	public static ShooterRows of(Plan plan, PlannedSoundtrack track) {
		Optional<FiringSystem> system = plan.script().firingSystem();
		return new ShooterRows(track.script().label(), track.slot(), frames(track, system.map(each -> each.control().lockFrames())),
				frames(track, system.map(each -> each.control().lossFrames())), holdover(plan, system),
				system.map(each -> Times.millis(each.control().lateToleranceUs())).orElse(Quantities.NOT_STATED), parts(plan, track, system), nights(plan, track));
	}

	private static String frames(PlannedSoundtrack track, Optional<Integer> frames) {
		if (frames.isEmpty() || track.line().isEmpty()) {
			return Quantities.NOT_STATED;
		}
		return frames.get() + " frames, " + Quantities.waiting(track.line().get().rate().startOf(frames.get()).ceilUs());
	}

	private static String holdover(Plan plan, Optional<FiringSystem> system) {
		Optional<Long> syncUs = plan.script().show().syncWithinUs();
		Optional<OwnClock> clock = clock(system);
		if (syncUs.isEmpty() || clock.isEmpty()) {
			return Quantities.NOT_STATED;
		}
		long us = clock.get().withinUs(syncUs.get());
		return us == Long.MAX_VALUE ? "as long as the show lasts" : Quantities.waiting(us) + ", until it is off by " + Times.millis(syncUs.get());
	}

	private static Optional<OwnClock> clock(Optional<FiringSystem> system) {
		return system.flatMap(each -> each.clockPpm().map(ppm -> new OwnClock(Math.abs(ppm), Math.abs(each.control().ageingPpmPerDay()))));
	}

	private static List<Part> parts(Plan plan, PlannedSoundtrack track, Optional<FiringSystem> system) {
		List<Part> parts = new ArrayList<>();
		for (PlannedSoundtrack.Section section : track.sections()) {
			List<PlannedCue> cues = plan.cues().stream().filter(cue -> cue.soundtrack().equals(track.name()) && cue.section().equals(section.name())).toList();
			long lengthUs = Math.max(1, section.toUs() - section.fromUs());
			String holds = String.join("; ", track.holds().stream().filter(hold -> hold.fromUs() < section.toUs() && hold.toUs() > section.fromUs())
					.map(hold -> label(track, hold.fromUs()) + " to " + label(track, hold.toUs()) + ", " + hold.reason()).toList());
			parts.add(new Part(section.label(), label(track, section.fromUs()), label(track, section.toUs()), cues.size(),
					Quantities.fixed(cues.size() * (double) SECOND_US / lengthUs, 1), most(track, cues), clock(system)
							.map(clock -> Quantities.fixed(clock.errorUs(lengthUs) / 1e3, 1) + " ms").orElse(Quantities.NOT_STATED), holds));
		}
		return parts;
	}

	/** The second in which most cues come due, the first of equals. */
	private static String most(PlannedSoundtrack track, List<PlannedCue> cues) {
		List<Long> due = cues.stream().map(cue -> cue.timing().fireUs()).sorted().toList();
		int most = 0;
		long atUs = 0;
		int end = 0;
		for (int i = 0; i < due.size(); i++) {
			while (end < due.size() && due.get(end) < due.get(i) + SECOND_US) {
				end++;
			}
			if (end - i > most) {
				most = end - i;
				atUs = due.get(i);
			}
		}
		return most == 0 ? "nothing" : Quantities.count(most, "cue", "cues") + " at " + label(track, atUs);
	}

	private static List<String> nights(Plan plan, PlannedSoundtrack track) {
		List<String> nights = new ArrayList<>();
		for (Rehearsal each : plan.script().rehearsals()) {
			if (each.soundtrack().equals(track.name())) {
				nights.add(each.name() + ": " + night(plan, each));
			}
		}
		return nights;
	}

	private static String night(Plan plan, Rehearsal rehearsal) {
		try {
			Rehearsed night = Rehearsals.of(plan, rehearsal);
			return night.worst().log().ended(End.FIRED).count() + " cues fired, " + night.worst().log().ended(End.SUPPRESSED).count() + " suppressed, "
					+ (night.worst().log().ended(End.SKIPPED).count() + night.notLoaded().size()) + " skipped"
					+ night.worst().log().worst().map(cue -> ", farthest off " + Times.millis(Math.abs(cue.lateUs().getAsLong()))).orElse("");
		} catch (ImpossibleNight e) {
			return "COULD NOT BE REHEARSED: " + e.getMessage();
		}
	}

	private static String label(PlannedSoundtrack track, long us) {
		return track.line().flatMap(line -> line.momentAt(us)).map(moment -> moment.label().toString()).orElse(Quantities.showTime(us));
	}
}
