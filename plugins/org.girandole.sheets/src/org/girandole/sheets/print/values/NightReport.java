package org.girandole.sheets.print.values;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalLong;
import java.util.TreeMap;
import java.util.stream.Collectors;

import org.girandole.plan.PlannedCue;
import org.girandole.plan.PlannedSoundtrack;
import org.girandole.plan.Times;
import org.girandole.plan.rehearse.ControllerState;
import org.girandole.plan.rehearse.CueOutcome;
import org.girandole.plan.rehearse.CueOutcome.End;
import org.girandole.plan.rehearse.Expectations;
import org.girandole.plan.rehearse.Night;
import org.girandole.plan.rehearse.Rehearsed;
import org.girandole.plan.rehearse.Rehearsed.Pass;
import org.girandole.plan.rehearse.RehearsalTrace;
import org.girandole.plan.rehearse.RehearsalTrace.Sample;
import org.girandole.plan.rehearse.Signal;
import org.girandole.plan.rehearse.StateChange;
import org.girandole.plan.rehearse.Window;
import org.girandole.plan.script.Rehearsal;
import org.girandole.timecode.TimecodeLine;

/**
 * What a rehearsed night is told as, on a page and in a terminal.
 *
 * @param alarms what comes before everything else: the wrong slot, a recording that says less than it seems to
 * @param wrong what goes wrong, one line each
 * @param counts what became of the cues, one line for each clock
 * @param worst the cue farthest from its moment and the largest clock error, each with the arithmetic behind it
 * @param audience what people would notice
 * @param notFired every cue of the slot that was never fired, in the order in which they were due
 * @param farthest the cues that are fired farthest from their moments, worst first
 * @param states what the controller said
 * @param tubes what is left, by position
 * @param expectations every expectation of the script, met or not
 */
public record NightReport(Rehearsed night, List<String> alarms, List<String> wrong, List<String> counts, List<String> worst,
		List<String> audience, List<NotFired> notFired, List<Fired> farthest, List<State> states, List<Tubes> tubes,
		List<Expected> expectations) {
	private static final int MOST_FIRED = 10;
	private static final long DARK_US = 3_000_000;

	public NightReport {
		alarms = List.copyOf(alarms);
		wrong = List.copyOf(wrong);
		counts = List.copyOf(counts);
		worst = List.copyOf(worst);
		audience = List.copyOf(audience);
		notFired = List.copyOf(notFired);
		farthest = List.copyOf(farthest);
		states = List.copyOf(states);
		tubes = List.copyOf(tubes);
		expectations = List.copyOf(expectations);
	}

	/** A cue that was never fired, and why. */
	public record NotFired(int cue, String what, String position, String due, String timecode, String end, String why) {
	}

	/** A cue that was fired. */
	public record Fired(int cue, String what, String position, String due, String fired, String off, String clockError, String state) {
	}

	/** From this moment the controller said this. */
	public record State(String at, String timecode, String words) {
	}

	/** An expectation of the script. */
	public record Expected(boolean met, String words) {
		/** What was expected, and whether it came so. */
		public String line() {
			return (met ? "met: " : "NOT MET: ") + words;
		}
	}

	/** What is left at a position, one line a piece. */
	public record Tubes(String position, List<String> left) {
		public Tubes {
			left = List.copyOf(left);
		}
	}

	/**
	 * Tells a night.
	 *
	 * @param script the rehearsal as it is written; empty for a recording
	 * @param syncUs how far from its moment an effect may be
	 * @param notes further lines about what goes wrong
	 * @param doubts what makes it say less than it seems to
	 */
	public static NightReport of(Rehearsed night, Optional<Rehearsal> script, Optional<Long> syncUs, List<String> notes, List<String> doubts) {
		return new Teller(night, script, syncUs).report(notes, doubts);
	}

	/** Whether an expectation is not met, or the rehearsal says less than it seems to. */
	public boolean troubled() {
		return alarms.size() > (night.wrongSlot() ? 1 : 0) || expectations.stream().anyMatch(each -> !each.met());
	}

	private static final class Teller {
		private final Rehearsed night;
		private final Optional<Rehearsal> script;
		private final Optional<Long> syncUs;
		private final Pass pass;
		private final PlannedSoundtrack track;

		Teller(Rehearsed night, Optional<Rehearsal> script, Optional<Long> syncUs) {
			this.night = night;
			this.script = script;
			this.syncUs = syncUs;
			this.pass = night.worst();
			this.track = night.soundtrack();
		}

		NightReport report(List<String> notes, List<String> doubts) {
			List<String> alarms = new ArrayList<>(doubts);
			if (night.wrongSlot()) {
				alarms.add(0, wrongSlot());
			}
			List<String> wrong = new ArrayList<>(notes);
			wrong.addAll(wrong());
			return new NightReport(night, alarms, wrong, counts(), worst(), audience(), notFired(), farthest(), states(), tubes(), expectations());
		}

		private String wrongSlot() {
			Optional<PlannedCue> first = night.notLoaded().stream().min(Comparator.comparingLong(cue -> cue.timing().fireUs()));
			Optional<CueOutcome> flown = pass.log().ended(End.FIRED).findFirst();
			String noticed = first.map(cue -> " It shows at " + moment(cue.timing().fireUs()) + ", when cue " + cue.number() + " (" + cue.label()
					+ " at " + cue.position() + ") is due and does not fire.").orElse("");
			if (flown.isPresent() && first.filter(cue -> cue.timing().fireUs() <= flown.get().firedUs().getAsLong()).isEmpty()) {
				noticed = " It shows at " + moment(flown.get().firedUs().getAsLong()) + ", when cue " + night.cue(flown.get()).number() + " ("
						+ night.cue(flown.get()).label() + " at " + night.cue(flown.get()).position() + ") flies, which is not of this soundtrack.";
			}
			return "WRONG SLOT: the controller is in slot " + night.slot() + ", " + track.script().label() + " is in slot " + track.slot() + "." + noticed
					+ " What would have flown: " + flown(pass) + later() + " None of the " + night.notLoaded().size() + " cues of " + track.script().label()
					+ " is loaded: all of them stay in the tubes and on the pins.";
		}

		/** What the slot holds beyond the night: the controller still knows it. */
		private String later() {
			OptionalLong first = night.night().cues().stream().mapToLong(Night.Due::dueUs).filter(us -> us >= night.night().endUs()).min();
			return first.isEmpty() ? "" : " A controller that is left running in that slot by its own clock, the control pressed, fires on from "
					+ Times.clock(first.getAsLong()) + ": switch it off.";
		}

		private String flown(Pass each) {
			Map<String, Long> byLabel = each.log().ended(End.FIRED).map(outcome -> night.cue(outcome).label())
					.collect(Collectors.groupingBy(label -> label, LinkedHashMap::new, Collectors.counting()));
			return (byLabel.isEmpty() ? "nothing" : "out of their music, " + named(byLabel)) + ".";
		}

		private List<String> wrong() {
			List<String> wrong = new ArrayList<>();
			night.lost().forEach(window -> wrong.add("Timecode is lost from " + span(window)));
			Signal.Run before = null;
			for (Signal.Run run : night.night().signal().runs()) {
				if (before != null && script.isPresent() && run.offsetUs() != before.offsetUs()) {
					wrong.add("The code jumps at " + moment(run.fromUs()) + ": from there on it reads " + ahead(run.offsetUs()));
				}
				before = run;
			}
			night.released().forEach(window -> wrong.add("The hold-to-fire control is let go from " + span(window)));
			if (night.night().musicLateUs() != 0) {
				wrong.add("The music runs " + Times.seconds(night.night().musicLateUs()) + " behind its timecode");
			}
			night.night().takeoverUs().ifPresent(us -> wrong.add("The backup controller takes over at " + moment(us) + "; its clock is off the other way"));
			wrong.add("The controller's own clock: " + night.passes().stream().map(Pass::clock).collect(Collectors.joining(", and "))
					+ (night.passes().size() > 1 ? "; the worse is told below: " + pass.clock() : ""));
			return wrong;
		}

		private List<String> counts() {
			return night.passes().stream().map(each -> "Clock " + each.clock() + ": " + each.log().ended(End.FIRED).count() + " fired, "
					+ each.log().ended(End.SUPPRESSED).count() + " suppressed, " + (each.log().ended(End.SKIPPED).count() + night.notLoaded().size())
					+ " skipped" + syncUs.map(limit -> "; " + beyond(each, limit) + " fired more than " + Times.millis(limit)
							+ " from their moment").orElse("; how far off an effect may be is not stated")).toList();
		}

		private static long beyond(Pass each, long limit) {
			return each.log().ended(End.FIRED).filter(cue -> Math.abs(cue.lateUs().getAsLong()) > limit).count();
		}

		private List<String> worst() {
			List<String> worst = new ArrayList<>();
			Optional<CueOutcome> cue = pass.log().worst();
			if (cue.isEmpty()) {
				worst.add("No cue is fired at all");
			} else {
				PlannedCue planned = night.cue(cue.get());
				worst.add("Farthest from its moment: cue " + planned.number() + " (" + planned.label() + " at " + planned.position() + "), due at "
						+ moment(cue.get().dueUs()) + (night.night().musicLateUs() == 0 ? "" : " by the code, at "
								+ moment(cue.get().dueUs() + night.night().musicLateUs()) + " by the music") + ", fired at "
						+ Times.exactClock(cue.get().firedUs().getAsLong()) + ": " + off(cue.get().lateUs().getAsLong()));
			}
			worst.add(clock());
			return worst;
		}

		/** The largest error of the clock with the multiplication behind it. */
		private String clock() {
			RehearsalTrace trace = night.trace(pass);
			Sample largest = trace.worst();
			long errorUs = largest.clockErrorUs().orElse(0);
			if (largest.clockErrorUs().isEmpty()) {
				return "Largest clock error: the controller never knows a time";
			}
			Sample since = trace.samples().get(0);
			for (Sample each : trace.samples()) {
				if (each.atUs() < largest.atUs() && each.clockErrorUs().equals(OptionalLong.of(0))) {
					since = each;
				}
			}
			if (errorUs == 0) {
				return "Largest clock error: none";
			}
			String sum = pass.model().clock().ageingPpmPerDay() == 0
					? Times.seconds(largest.atUs() - since.atUs()) + " × " + Quantities.plain(pass.model().clock().ppm(), 3) + " ppm = "
					: Times.seconds(largest.atUs() - since.atUs()) + " at " + Quantities.plain(pass.model().clock().ppm(), 3) + " ppm, ageing "
							+ Quantities.plain(pass.model().clock().ageingPpmPerDay(), 3) + " ppm a day: ";
			return "Largest clock error: on its own from " + moment(since.atUs()) + " to " + moment(largest.atUs()) + ", " + sum
					+ Times.millis(errorUs).replace('-', '−');
		}

		private List<String> audience() {
			List<String> seen = new ArrayList<>();
			List<PlannedCue> left = night.left();
			Map<String, List<PlannedCue>> bySection = new LinkedHashMap<>();
			left.stream().filter(cue -> cue.slot() == track.slot()).sorted(Comparator.comparingLong(cue -> cue.timing().seenUs()))
					.forEach(cue -> bySection.computeIfAbsent(cue.section(), name -> new ArrayList<>()).add(cue));
			bySection.forEach((section, cues) -> seen.add((section.isEmpty() ? "Outside of the sections" : "In " + label(section)) + ", between "
					+ Times.clock(cues.get(0).timing().seenUs()) + " and "
					+ Times.clock(cues.get(cues.size() - 1).timing().seenUs()) + ", "
					+ Quantities.count(cues.size(), "effect is", "effects are") + " missing: " + named(cues.stream().map(PlannedCue::label)
							.collect(Collectors.groupingBy(label -> label, LinkedHashMap::new, Collectors.counting())))));
			dark(left).ifPresent(seen::add);
			syncUs.ifPresent(limit -> {
				long beyond = beyond(pass, limit);
				if (beyond > 0) {
					seen.add(Quantities.count(beyond, "effect comes", "effects come") + " more than " + Times.millis(limit) + " off the music");
				}
			});
			if (night.wrongSlot() && pass.log().ended(End.FIRED).findAny().isPresent()) {
				seen.add("Effects of another soundtrack fly");
			}
			if (seen.isEmpty()) {
				seen.add(pass.log().worst().map(cue -> "Nothing: every effect comes, none more than "
						+ Times.millis(Math.abs(cue.lateUs().getAsLong())) + " off what was planned").orElse("No effect at all"));
			}
			return seen;
		}

		/** The longest time without anything fired that is longer than it was planned to be. */
		private Optional<String> dark(List<PlannedCue> left) {
			TreeMap<Long, Boolean> moments = new TreeMap<>();
			night.cues().values().stream().filter(cue -> cue.slot() == track.slot() && !left.contains(cue))
					.forEach(cue -> moments.put(cue.timing().seenUs(), true));
			long longestUs = DARK_US;
			String words = null;
			for (PlannedCue cue : left) {
				Long from = moments.floorKey(cue.timing().seenUs());
				Long to = moments.higherKey(cue.timing().seenUs());
				if (from != null && to != null && to - from > longestUs) {
					longestUs = to - from;
					words = "No new effect from " + Times.clock(from) + " to " + Times.clock(to) + ", for "
							+ Times.seconds(to - from);
				}
			}
			return Optional.ofNullable(words);
		}

		private List<NotFired> notFired() {
			List<NotFired> lines = new ArrayList<>();
			// In the wrong slot what stays on the pins of that slot belongs to another soundtrack, whose turn may yet come.
			pass.log().cues().stream().filter(outcome -> outcome.end() == End.SUPPRESSED || outcome.end() == End.SKIPPED && !night.wrongSlot())
					.forEach(outcome -> {
				PlannedCue cue = night.cue(outcome);
				lines.add(new NotFired(cue.number(), what(cue), cue.position(), Times.clock(outcome.dueUs()), timecode(outcome.dueUs()),
						outcome.end().words(), why(outcome)));
			});
			return lines;
		}

		private boolean suppressed(PlannedCue cue) {
			return pass.log().ended(End.SUPPRESSED).anyMatch(outcome -> outcome.key().equals(cue.key()));
		}

		private String why(CueOutcome outcome) {
			if (outcome.end() == End.SKIPPED) {
				return outcome.dueUs() < firstLockUs() ? "before the first lock at " + moment(firstLockUs()) : "the code jumped over it, or it never came due";
			}
			long us = outcome.commandUs().getAsLong();
			return night.released().stream().filter(window -> window.holds(us)).findFirst().map(window -> "came due at "
					+ Times.exactClock(us) + "; let go from " + span(window)).orElse("the control was let go");
		}

		private long firstLockUs() {
			return pass.log().states().stream().filter(change -> change.state() == ControllerState.LOCKED).mapToLong(StateChange::atUs).findFirst()
					.orElse(Long.MAX_VALUE / 2);
		}

		private List<Fired> farthest() {
			return pass.log().ended(End.FIRED).filter(cue -> cue.lateUs().getAsLong() != 0)
					.sorted(Comparator.comparingLong((CueOutcome cue) -> -Math.abs(cue.lateUs().getAsLong()))).limit(MOST_FIRED).map(outcome -> {
						PlannedCue cue = night.cue(outcome);
						return new Fired(cue.number(), what(cue), cue.position(), Times.clock(outcome.dueUs()),
								Times.exactClock(outcome.firedUs().getAsLong()), off(outcome.lateUs().getAsLong()),
								Times.millis(outcome.clockErrorUs()).replace('-', '−'), outcome.state().words());
					}).toList();
		}

		private List<State> states() {
			return pass.log().states().stream().filter(change -> change.atUs() <= night.untilUs())
					.map(change -> new State(Times.clock(change.atUs()), timecode(change.atUs()), change.state().words())).toList();
		}

		private List<Tubes> tubes() {
			Map<String, List<String>> byPosition = new TreeMap<>();
			night.left().stream().filter(cue -> !night.wrongSlot() || night.cues().containsKey(cue.key()) && suppressed(cue)).forEach(cue -> byPosition.computeIfAbsent(cue.position(), name -> new ArrayList<>())
					.add(PinWords.tube(cue) + ": " + what(cue) + ", cue " + cue.number() + ", " + PinWords.pin(cue)));
			return byPosition.entrySet().stream().map(entry -> new Tubes(entry.getKey(), entry.getValue())).toList();
		}

		private List<Expected> expectations() {
			List<Expected> lines = new ArrayList<>();
			script.ifPresent(written -> {
				List<Expectations.Unmet> unmet = Expectations.unmet(written, night);
				for (Rehearsal.Expectation each : written.expectations()) {
					List<Expectations.Unmet> of = unmet.stream().filter(trouble -> trouble.source().equals(each.source())).toList();
					String said = each instanceof Rehearsal.Limit limit
							? "no cue " + (limit.side() == Rehearsal.Limit.Side.LATER ? "later" : "earlier") + " than " + Times.millis(limit.us())
							: End.valueOf(((Rehearsal.CueEnds) each).end().name()).words() + " " + ((Rehearsal.CueEnds) each).cue();
					lines.add(new Expected(of.isEmpty(), of.isEmpty() ? said : said + ": " + of.get(0).message() + "; found " + of.get(0).found()));
				}
			});
			return lines;
		}

		private String label(String section) {
			return track.sections().stream().filter(each -> each.name().equals(section)).map(PlannedSoundtrack.Section::label).findFirst().orElse(section);
		}

		private static String what(PlannedCue cue) {
			return cue.label() + cue.cueName().map(name -> " (" + name + ")").orElse("");
		}

		private static String named(Map<String, Long> byLabel) {
			return byLabel.entrySet().stream().map(entry -> entry.getValue() + " × " + entry.getKey()).collect(Collectors.joining(", "));
		}

		private String moment(long us) {
			return Times.clock(us) + (timecode(us).isEmpty() ? "" : " (" + timecode(us) + ")");
		}

		private String span(Window window) {
			return moment(window.fromUs()) + " to " + moment(window.toUs());
		}

		private String timecode(long us) {
			return track.line().flatMap(line -> line.momentAt(us)).map(TimecodeLine.Moment::label).map(Object::toString).orElse("");
		}

		private static String off(long lateUs) {
			return lateUs == 0 ? "on its moment" : Times.millis(Math.abs(lateUs)) + (lateUs > 0 ? " late" : " early");
		}

		private static String ahead(long offsetUs) {
			return offsetUs == 0 ? "the right time again" : Times.seconds(Math.abs(offsetUs)) + (offsetUs > 0 ? " ahead" : " behind");
		}
	}
}
