package org.girandole.sheets.print;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

import org.girandole.plan.CheckedPlan;
import org.girandole.sheets.print.html.NightPage;
import org.girandole.sheets.print.values.NightReport;

/** Rehearsed nights as a page, a drawing and lines for a terminal. */
public final class RehearsalPages {
	private RehearsalPages() {
	}

	/**
	 * One document with all nights, well-formed as XML; {@link PdfWriter} lays it out.
	 *
	 * @param sweep lines about where losing code hurts most; empty when nothing was swept
	 */
	public static String html(CheckedPlan checked, List<NightReport> nights, List<String> sweep, PaperSize paper, String toolVersion) {
		return NightPage.html(checked, nights, sweep, paper, toolVersion);
	}

	/** One night as an SVG document in millimetres of paper. */
	public static String svg(CheckedPlan checked, NightReport night) {
		return NightPage.svg(night, checked.plan().script().show().label() + ", release " + checked.plan().stamp().printed(), syncUs(checked));
	}

	/** One night as lines of text. */
	public static List<String> lines(NightReport night) {
		List<String> lines = new ArrayList<>();
		lines.add("\"" + night.night().name() + "\": " + night.night().soundtrack().script().label() + ", slot " + night.night().slot());
		night.alarms().forEach(lines::add);
		add(lines, "  ", night.wrong());
		add(lines, "  ", night.counts());
		add(lines, "  ", night.worst());
		add(lines, "  the audience: ", night.audience());
		add(lines, "  expected, ", night.expectations().stream().map(NightReport.Expected::line).toList());
		if (!night.notFired().isEmpty()) {
			lines.add("  not fired (cue, due, timecode):");
			night.notFired().forEach(cue -> lines.add("    " + cue.cue() + "  " + cue.due() + "  " + cue.timecode() + "  " + cue.what() + " at " + cue.position()
					+ "  " + cue.end() + ": " + cue.why()));
			lines.add("  left in the tubes and on the pins:");
			night.tubes().forEach(place -> place.left().forEach(piece -> lines.add("    " + place.position() + "  " + piece)));
		}
		if (!night.farthest().isEmpty()) {
			lines.add("  fired farthest from their moments (cue, due, fired, off, clock error, state):");
			night.farthest().forEach(cue -> lines.add("    " + cue.cue() + "  " + cue.due() + "  " + cue.fired() + "  " + cue.off() + "  " + cue.clockError()
					+ "  " + cue.state() + "  " + cue.what() + " at " + cue.position()));
		}
		lines.add("  the controller said:");
		night.states().forEach(state -> lines.add("    " + state.at() + "  " + (state.timecode().isEmpty() ? "" : state.timecode() + "  ") + state.words()));
		return lines;
	}

	private static void add(List<String> lines, String before, List<String> more) {
		more.forEach(line -> lines.add(before + line));
	}

	private static Optional<Long> syncUs(CheckedPlan checked) {
		return checked.plan().script().show().syncWithinUs();
	}
}
