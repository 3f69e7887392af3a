package org.girandole.sheets.print.html;

import static org.girandole.sheets.print.html.Svg.SOLID;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalLong;

import org.girandole.plan.PlannedSoundtrack.Section;
import org.girandole.plan.Times;
import org.girandole.plan.rehearse.ControllerState;
import org.girandole.plan.rehearse.CueOutcome;
import org.girandole.plan.rehearse.CueOutcome.End;
import org.girandole.plan.rehearse.Rehearsed;
import org.girandole.plan.rehearse.Rehearsed.Pass;
import org.girandole.plan.rehearse.RehearsalTrace;
import org.girandole.plan.rehearse.RehearsalTrace.Sample;
import org.girandole.plan.rehearse.Window;

/**
 * A night against the music: what the controller said, how far off its clock was, and what became of each cue. Nothing is told by colour.
 *
 * @param drawing the lines, without words
 * @param words names and where they stand
 */
record NightPicture(String drawing, List<SitePicture.Word> words, double widthMm, double heightMm) {
	private static final double LEFT = 27;
	private static final double RIGHT = 4;
	private static final double SECTIONS = 2;
	private static final double STATES = 13;
	private static final double STATE_ROW = 5;
	private static final double ERROR = 39;
	private static final double ERROR_HEIGHT = 32;
	private static final double CUES = 77;
	private static final double CUE_ROW = 6.5;
	private static final double AXIS = 105;
	private static final double HEIGHT = 119;
	private static final double WORD_MM = 1.5;
	private static final String SECOND_DASHES = "1.6 1";
	private static final long[] TICKS_US = {5_000_000, 10_000_000, 30_000_000, 60_000_000, 300_000_000, 600_000_000};
	private static final int MOST_TICKS = 12;
	private static final long SMALLEST_SCALE_US = 100;
	private static final ControllerState[] ROWS = {ControllerState.LOCKED, ControllerState.ACQUIRING, ControllerState.HOLDOVER,
			ControllerState.NO_SIGNAL};

	/** Draws a night. */
	static NightPicture of(Rehearsed night, Optional<Long> syncUs, double widthMm) {
		return new Drawer(night, syncUs, widthMm).draw();
	}

	/** A document of its own, its words as text in it. */
	String document(String title) {
		StringBuilder out = new StringBuilder("<svg xmlns=\"http://www.w3.org/2000/svg\" width=\"").append(Svg.number(widthMm)).append("mm\" height=\"")
				.append(Svg.number(heightMm + 8)).append("mm\" viewBox=\"0 0 ").append(Svg.point(widthMm, heightMm + 8))
				.append("\" font-family=\"sans-serif\">\n<title>").append(Html.text(title)).append("</title>\n")
				.append("<rect width=\"").append(Svg.number(widthMm)).append("\" height=\"").append(Svg.number(heightMm + 8)).append("\" fill=\"#ffffff\"/>\n");
		text(out, 2, 5, title);
		// The drawing stands in this one: there its own size is that of its view box.
		out.append("<g transform=\"translate(0 8)\">\n").append(drawing.replaceFirst("(width=\"[0-9.]+)mm(\" height=\"[0-9.]+)mm", "$1$2")).append('\n');
		words.forEach(word -> text(out, word.xMm(), word.yMm() + 2.6, word.text()));
		return out.append("</g>\n</svg>\n").toString();
	}

	private static void text(StringBuilder out, double x, double y, String text) {
		out.append("<text x=\"").append(Svg.number(x)).append("\" y=\"").append(Svg.number(y))
				.append("\" fill=\"#000000\" stroke=\"none\" font-size=\"2.6\">").append(Html.text(text)).append("</text>\n");
	}

	private static final class Drawer {
		private final Rehearsed night;
		private final Optional<Long> syncUs;
		private final double widthMm;
		private final long fromUs;
		private final long toUs;
		private final Svg svg;
		private final List<SitePicture.Word> words = new ArrayList<>();

		Drawer(Rehearsed night, Optional<Long> syncUs, double widthMm) {
			this.night = night;
			this.syncUs = syncUs;
			this.widthMm = widthMm;
			this.fromUs = Math.min(0, night.night().signal().gridUs());
			this.toUs = night.untilUs();
			this.svg = new Svg(widthMm, HEIGHT);
		}

		NightPicture draw() {
			svg.rect(0, 0, widthMm, HEIGHT, "#ffffff", 0, SOLID);
			night.lost().forEach(window -> band(window, "#e4e4e4"));
			night.released().forEach(window -> band(window, "#c4c4c4"));
			sections();
			states();
			errors();
			cues();
			axis();
			return new NightPicture(svg.element(), words, widthMm, HEIGHT);
		}

		private double x(long us) {
			double share = (double) (us - fromUs) / Math.max(1, toUs - fromUs);
			return LEFT + Math.max(0, Math.min(1, share)) * (widthMm - LEFT - RIGHT);
		}

		private void band(Window window, String fill) {
			double x = x(window.fromUs());
			svg.rect(x, STATES - 2, Math.max(0.4, x(window.toUs()) - x), AXIS - STATES + 2, fill, 0, SOLID);
		}

		private void word(double x, double y, String text) {
			words.add(new SitePicture.Word(x, y, text, false));
		}

		private void sections() {
			double free = LEFT;
			for (Section section : night.soundtrack().sections()) {
				double x = x(section.fromUs());
				svg.line(x, SECTIONS, x, AXIS, 0.15, "0.5 0.9");
				// A name that would run into the next stands a line lower.
				String name = Html.brief(section.label(), 18);
				boolean lower = x < free;
				word(x + 0.6, SECTIONS - 1 + (lower ? 3.4 : 0), name);
				free = lower ? free : x + name.length() * WORD_MM;
			}
		}

		private void states() {
			RehearsalTrace trace = night.trace(night.worst());
			for (int row = 0; row < ROWS.length; row++) {
				double y = STATES + row * STATE_ROW;
				word(1, y + 0.2, ROWS[row].words());
				svg.line(LEFT, y + STATE_ROW, widthMm - RIGHT, y + STATE_ROW, 0.1, SOLID);
				List<Sample> samples = trace.samples();
				for (int i = 0; i + 1 < samples.size(); i++) {
					if (samples.get(i).state() == ROWS[row]) {
						double x = x(samples.get(i).atUs());
						svg.rect(x, y + 0.8, Math.max(0.3, x(samples.get(i + 1).atUs()) - x), STATE_ROW - 1.6, "#000000", 0, SOLID);
					}
				}
			}
			svg.rect(LEFT, STATES, widthMm - LEFT - RIGHT, STATE_ROW * ROWS.length, "none", 0.25, SOLID);
		}

		private void errors() {
			long scaleUs = SMALLEST_SCALE_US;
			for (Pass pass : night.passes()) {
				OptionalLong worst = night.trace(pass).worst().clockErrorUs();
				scaleUs = Math.max(scaleUs, Math.abs(worst.orElse(0)));
			}
			double middle = ERROR + ERROR_HEIGHT / 2;
			svg.line(LEFT, middle, widthMm - RIGHT, middle, 0.15, SOLID);
			svg.rect(LEFT, ERROR, widthMm - LEFT - RIGHT, ERROR_HEIGHT, "none", 0.25, SOLID);
			word(1, ERROR + 4, "clock error");
			word(1, ERROR + 8, "early +, late −");
			String size = String.format(Locale.ROOT, "%.3f", scaleUs / 1e3).replaceAll("\\.?0+$", "") + " ms";
			word(13, ERROR - 0.6, "+" + size);
			word(13, middle - 1.8, "0");
			word(13, ERROR + ERROR_HEIGHT - 3, "−" + size);
			for (int i = 0; i < night.passes().size(); i++) {
				path(night.trace(night.passes().get(i)), middle, (ERROR_HEIGHT / 2 - 1) / scaleUs, i == 0 ? SOLID : SECOND_DASHES);
				word(LEFT + 2 + i * 48.0, ERROR + ERROR_HEIGHT + 0.4, (i == 0 ? "solid: " : "dashed: ") + "clock " + night.passes().get(i).clock());
			}
		}

		private void path(RehearsalTrace trace, double middle, double mmPerUs, String dashes) {
			StringBuilder path = new StringBuilder();
			boolean drawing = false;
			for (Sample each : trace.samples()) {
				if (each.clockErrorUs().isPresent()) {
					path.append(drawing ? 'L' : 'M').append(Svg.point(x(each.atUs()), middle - each.clockErrorUs().getAsLong() * mmPerUs));
				}
				drawing = each.clockErrorUs().isPresent();
			}
			if (path.length() > 0) {
				svg.path(path.toString(), "none", 0.45, dashes);
			}
		}

		private void cues() {
			String[] rows = {"fired", syncUs.isPresent() ? "off by > " + Times.millis(syncUs.get()) : "late or early", "suppressed", "skipped"};
			for (int row = 0; row < rows.length; row++) {
				word(1, CUES + row * CUE_ROW + 1.4, rows[row]);
				svg.line(LEFT, CUES + row * CUE_ROW, widthMm - RIGHT, CUES + row * CUE_ROW, 0.1, SOLID);
			}
			for (CueOutcome cue : night.worst().log().cues()) {
				int row = row(cue);
				mark(cue.firedUs().isPresent() ? cue.firedUs().getAsLong() : cue.dueUs(), row);
			}
			night.notLoaded().forEach(cue -> mark(cue.timing().fireUs(), 3));
			svg.rect(LEFT, CUES, widthMm - LEFT - RIGHT, CUE_ROW * rows.length, "none", 0.25, SOLID);
		}

		private int row(CueOutcome cue) {
			if (cue.end() != End.FIRED) {
				return cue.end() == End.SUPPRESSED ? 2 : 3;
			}
			long off = Math.abs(cue.lateUs().getAsLong());
			return off > syncUs.orElse(0L) ? 1 : 0;
		}

		private void mark(long us, int row) {
			double x = x(us);
			double y = CUES + row * CUE_ROW + 1;
			double height = CUE_ROW - 2;
			switch (row) {
				case 0 -> svg.line(x, y, x, y + height, 0.25, SOLID);
				case 1 -> svg.path("M" + Svg.point(x - 1, y) + "L" + Svg.point(x + 1, y) + "L" + Svg.point(x, y + height) + "Z", "#000000", 0.1, SOLID);
				case 2 -> svg.path("M" + Svg.point(x - 1.1, y + 1) + "L" + Svg.point(x + 1.1, y + height - 1) + "M" + Svg.point(x + 1.1, y + 1) + "L"
						+ Svg.point(x - 1.1, y + height - 1), "none", 0.4, SOLID);
				default -> svg.circle(x, y + height / 2, 1, "#ffffff", 0.35, SOLID);
			}
		}

		private void axis() {
			long step = TICKS_US[TICKS_US.length - 1];
			for (int i = TICKS_US.length - 1; i >= 0 && (toUs - fromUs) / TICKS_US[i] <= MOST_TICKS; i--) {
				step = TICKS_US[i];
			}
			svg.line(LEFT, AXIS, widthMm - RIGHT, AXIS, 0.3, SOLID);
			for (long us = Math.floorDiv(fromUs + step - 1, step) * step; us <= toUs; us += step) {
				svg.line(x(us), AXIS, x(us), AXIS + 1.5, 0.3, SOLID);
				word(x(us) - 3, AXIS + 1.6, Times.clock(us).replaceAll("\\..*", ""));
			}
			word(LEFT, AXIS + 5.4, "time in the music, minutes and seconds from the first note");
			if (!night.lost().isEmpty() || !night.released().isEmpty()) {
				svg.rect(LEFT, AXIS + 10, 5, 3, "#e4e4e4", 0.2, SOLID);
				word(LEFT + 6, AXIS + 9.6, "timecode lost");
				svg.rect(LEFT + 40, AXIS + 10, 5, 3, "#c4c4c4", 0.2, SOLID);
				word(LEFT + 46, AXIS + 9.6, "control let go");
			}
		}
	}
}
