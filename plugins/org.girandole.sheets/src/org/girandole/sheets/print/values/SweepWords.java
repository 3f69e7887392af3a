package org.girandole.sheets.print.values;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;

import org.girandole.plan.Plan;
import org.girandole.plan.PlannedCue;
import org.girandole.plan.PlannedSoundtrack;
import org.girandole.plan.Times;
import org.girandole.plan.rehearse.Sweep;
import org.girandole.plan.rehearse.Sweep.Holdover;
import org.girandole.plan.rehearse.Sweep.Scenario;

/** A sweep in words. */
public final class SweepWords {
	private SweepWords() {
	}

	/** Lines about where losing code hurts most, and how long the clocks hold. */
	public static List<String> lines(Plan plan, PlannedSoundtrack track, Sweep sweep) {
		Map<String, PlannedCue> cues = plan.cues().stream().collect(Collectors.toMap(PlannedCue::key, cue -> cue));
		List<String> lines = new ArrayList<>();
		lines.add(track.script().label() + ": " + Quantities.count(sweep.scenarios().size(), "loss", "losses")
				+ " tried, one beginning at every second, " + Sweep.LENGTHS_US.stream().map(Times::seconds).collect(Collectors.joining(", ")) + " long, with a clock "
				+ sweep.scenarios().stream().map(Scenario::clock).distinct().collect(Collectors.joining(", ")));
		for (long lengthUs : Sweep.LENGTHS_US) {
			sweep.worst(lengthUs).ifPresent(worst -> lines.add("Worst place to lose code for " + Times.seconds(lengthUs) + ": " + words(worst, cues)));
		}
		lines.add(sweep.worst().map(worst -> "Worst of all: " + words(worst, cues)).orElse("The music is shorter than any loss that is tried"));
		for (Holdover each : sweep.holdover()) {
			lines.add("A clock " + each.clock() + " stays within " + Times.millis(each.limitUs()) + (each.formulaUs() == Long.MAX_VALUE ? " for ever"
					: " for " + Times.seconds(rounded(each.formulaUs())) + " by formula, " + Times.seconds(rounded(each.simulatedUs())) + " by simulation: "
							+ (each.agree() ? "they agree to a microsecond of error" : "THEY DISAGREE")));
		}
		if (sweep.holdover().isEmpty()) {
			lines.add("How long holdover is good enough is not known: the show does not say 'sync within'");
		}
		lines.add(sweep.disagreements().isEmpty() ? "Formula and simulation agree on every cue of every loss, to "
				+ Times.millis(sweep.jitterUs() + 1) : "FORMULA AND SIMULATION DISAGREE in " + sweep.disagreements().size() + " losses, first: "
						+ words(sweep.disagreements().get(0), cues));
		return lines;
	}

	/** To the millisecond: the clock's own resolution is coarser. */
	private static long rounded(long us) {
		return (us + 500) / 1000 * 1000;
	}

	private static String words(Scenario loss, Map<String, PlannedCue> cues) {
		Optional<PlannedCue> cue = loss.worstKey().map(cues::get);
		return "from " + Times.clock(loss.fromUs()) + " to " + Times.clock(loss.fromUs() + loss.lengthUs()) + ", clock " + loss.clock() + ": "
				+ Quantities.count(loss.notFired(), "cue", "cues") + " not fired, farthest off " + Times.millis(Math.abs(loss.worstUs()))
				+ (loss.worstUs() > 0 ? " late" : loss.worstUs() < 0 ? " early" : "")
				+ cue.map(each -> " (cue " + each.number() + ", " + each.label() + " at " + each.position() + ")").orElse("");
	}
}
