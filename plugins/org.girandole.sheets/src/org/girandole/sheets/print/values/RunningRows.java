package org.girandole.sheets.print.values;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.stream.Stream;

import org.girandole.plan.Plan;
import org.girandole.plan.PlannedCue;
import org.girandole.plan.PlannedSoundtrack;
import org.girandole.timecode.TimecodeLine;

/**
 * What the shooter follows through one soundtrack: moments of firing and, between them, everything that changes what the hand does.
 *
 * @param rate frames a second, in words
 * @param start label at which the timecode begins
 * @param preroll how long it runs before the first note
 */
public record RunningRows(String soundtrack, int slot, String rate, String start, String preroll, String length, List<Row> rows) {
	/** From this long a wait to the next firing is printed as a long one; common practice, no source. */
	public static final long LONG_WAIT_US = 10_000_000;

	public RunningRows {
		rows = List.copyOf(rows);
	}

	/** One line of the sheet. */
	public sealed interface Row {
		/** Where it stands, microseconds from the first note. */
		long atUs();
	}

	/**
	 * Everything that fires at one moment.
	 *
	 * @param cues cue numbers, runs drawn together
	 * @param next time to the next firing, or that this is the last
	 * @param longWait whether the wait is long enough to say so
	 * @param inHold whether it comes due in a hold window, where nothing may fire
	 * @param what one line an effect, with how many and where
	 */
	public record Moment(long atUs, String time, String timecode, String cues, String next, boolean longWait, boolean inHold,
			List<What> what) implements Row {
		public Moment {
			what = List.copyOf(what);
		}
	}

	/** An effect of a moment: how many, where, and the names and notes the script gave. */
	public record What(int count, String label, String positions, String note) {
	}

	/** The start of a section. */
	public record Part(long atUs, String time, String timecode, String label) implements Row {
	}

	/** A window in which the hand lets go. */
	public record Hold(long atUs, String from, String to, String fromTimecode, String toTimecode, String reason) implements Row {
	}

	/** Timecode begins, first note, end of the music. */
	public record Milestone(long atUs, String time, String timecode, String label) implements Row {
	}

	/** The running sheet of one soundtrack. */
	public static RunningRows of(Plan plan, PlannedSoundtrack soundtrack) {
		List<PlannedCue> cues = plan.cues().stream().filter(cue -> cue.soundtrack().equals(soundtrack.name())).toList();
		List<Row> rows = new ArrayList<>();
		soundtrack.line().ifPresent(line -> {
			rows.add(new Milestone(-line.prerollUs(), Quantities.showTime(-line.prerollUs()), line.start().toString(), "TIMECODE STARTS"));
			rows.add(new Milestone(0, Quantities.showTime(0), line.firstNote().toString(), "FIRST NOTE"));
		});
		soundtrack.lengthUs().ifPresent(lengthUs -> rows.add(
				new Milestone(lengthUs, Quantities.showTime(lengthUs), label(soundtrack, lengthUs), "END OF THE MUSIC")));
		soundtrack.sections().forEach(section -> rows.add(
				new Part(section.fromUs(), Quantities.showTime(section.fromUs()), label(soundtrack, section.fromUs()), section.label())));
		soundtrack.holds().forEach(hold -> rows.add(new Hold(hold.fromUs(), Quantities.showTime(hold.fromUs()),
				Quantities.showTime(hold.toUs()), label(soundtrack, hold.fromUs()), label(soundtrack, hold.toUs()), hold.reason())));
		rows.addAll(moments(soundtrack, cues));
		rows.sort(Comparator.comparingLong(Row::atUs).thenComparingInt(RunningRows::rank));
		return new RunningRows(soundtrack.script().label(), soundtrack.slot(),
				soundtrack.line().map(line -> line.rate().words() + " fps").orElse(Quantities.NOT_STATED),
				soundtrack.line().map(TimecodeLine::start).map(Object::toString).orElse(Quantities.NOT_STATED),
				soundtrack.line().map(line -> Quantities.waiting(line.prerollUs())).orElse(Quantities.NOT_STATED),
				soundtrack.lengthUs().map(Quantities::showTime).orElse(Quantities.NOT_STATED), rows);
	}

	private static List<Moment> moments(PlannedSoundtrack soundtrack, List<PlannedCue> cues) {
		TreeMap<Long, List<PlannedCue>> byTime = new TreeMap<>();
		cues.forEach(cue -> byTime.computeIfAbsent(cue.timing().fireUs(), at -> new ArrayList<>()).add(cue));
		List<Moment> moments = new ArrayList<>();
		byTime.forEach((atUs, together) -> {
			Long nextUs = byTime.higherKey(atUs);
			moments.add(new Moment(atUs, Quantities.showTime(atUs), together.get(0).timecode().map(Object::toString).orElse("before timecode"),
					Quantities.runs(together.stream().map(PlannedCue::number).sorted().toList()),
					nextUs == null ? "LAST" : Quantities.waiting(nextUs - atUs), nextUs != null && nextUs - atUs >= LONG_WAIT_US,
					soundtrack.holds().stream().anyMatch(hold -> atUs >= hold.fromUs() && atUs <= hold.toUs()), what(together)));
		});
		return moments;
	}

	private static List<What> what(List<PlannedCue> together) {
		Map<String, List<PlannedCue>> byLabel = new LinkedHashMap<>();
		together.forEach(cue -> byLabel.computeIfAbsent(cue.label(), label -> new ArrayList<>()).add(cue));
		return byLabel.values().stream().map(cues -> new What(cues.size(),
				cues.get(0).label() + (cues.get(0).pieces() > 1 ? " (chain of " + cues.get(0).pieces() + ")" : ""),
				String.join(", ", cues.stream().map(PlannedCue::position).distinct().toList()), note(cues))).toList();
	}

	private static String note(List<PlannedCue> cues) {
		long withoutPin = cues.stream().filter(cue -> cue.pin().isEmpty()).count();
		String words = String.join("; ", cues.stream().flatMap(cue -> Stream.concat(cue.cueName().stream(),
				cue.script().note().stream())).distinct().toList());
		return withoutPin == 0 ? words : words + (words.isEmpty() ? "" : "; ") + withoutPin + " with NO PIN: will not fire";
	}

	private static String label(PlannedSoundtrack soundtrack, long atUs) {
		return soundtrack.line().flatMap(line -> line.momentAt(atUs)).map(moment -> moment.label().toString()).orElse("before timecode");
	}

	/** At the same moment: milestones first, then sections, then holds, then what fires. */
	private static int rank(Row row) {
		if (row instanceof Milestone) {
			return 0;
		}
		if (row instanceof Part) {
			return 1;
		}
		return row instanceof Hold ? 2 : 3;
	}
}
