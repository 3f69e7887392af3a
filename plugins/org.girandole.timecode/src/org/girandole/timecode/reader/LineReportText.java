package org.girandole.timecode.reader;

import static org.girandole.timecode.reader.LineText.count;
import static org.girandole.timecode.reader.LineText.one;
import static org.girandole.timecode.reader.LineText.signed;
import static org.girandole.timecode.reader.LineText.whole;

import java.util.ArrayList;
import java.util.List;

import org.girandole.timecode.reader.LineVerdict.Reason;

/** A report and its verdict as lines of text for a terminal. */
public final class LineReportText {
	private static final int MOST_ROWS = 20;

	private LineReportText() {
	}

	/** The verdict with its reasons, then what was measured, then every gap and jump up to a limit that is named. */
	public static List<String> lines(LineReport report, LineVerdict verdict) {
		List<String> lines = new ArrayList<>();
		lines.add(verdict.fitness().words());
		for (Reason reason : verdict.reasons()) {
			lines.add("  " + sign(reason) + " " + reason.text());
		}
		lines.add("");
		lines.add("Recording: " + report.time(report.sampleFrames()) + ", " + report.sampleRate() + " Hz, "
				+ count(report.channels().size(), "channel", "channels"));
		for (ChannelReport channel : report.channels()) {
			channel(lines, report, channel);
		}
		return List.copyOf(lines);
	}

	private static String sign(Reason reason) {
		return switch (reason.weight()) {
			case AGAINST -> "-";
			case CARE -> "!";
			case UNKNOWN -> "?";
			case FOR -> "+";
		};
	}

	private static void channel(List<String> lines, LineReport report, ChannelReport channel) {
		ChannelAudio audio = channel.audio();
		String sound = Double.isInfinite(audio.peakDbfs()) ? "silent" : "peak " + one(audio.peakDbfs()) + " dBFS, offset " + one(audio.offset() * 100) + " %";
		lines.add("Channel " + channel.channel() + ": " + (channel.timecode().isPresent() ? "timecode" : "no timecode") + "; " + sound);
		channel.timecode().ifPresent(reading -> reading(lines, report, reading));
	}

	private static void reading(List<String> lines, LineReport report, TimecodeReading reading) {
		lines.add("  labels   " + reading.first().digits() + " at " + report.time(reading.firstLock()) + " to " + reading.last().digits() + " at "
				+ report.time(reading.lastGood()) + ", " + reading.rate());
		lines.add("  frames   " + reading.goodFrames() + " good, of which " + reading.mendedFrames() + " mended; " + reading.doubtfulFrames() + " doubtful; "
				+ reading.lostFrames() + " lost");
		lines.add("  level    " + one(reading.levelDbfs().mean()) + " dBFS (" + one(reading.levelDbfs().least()) + " to " + one(reading.levelDbfs().most()) + ")");
		lines.add("  noise    " + one(reading.snrDb().mean()) + " dB below the signal, at worst " + one(reading.snrDb().least()) + " dB");
		lines.add("  jitter   " + one(reading.jitterUs().mean()) + " us, at worst " + one(reading.jitterUs().most()) + " us");
		lines.add("  speed    " + signed(reading.speedPpm()) + " parts per million, " + signed(reading.frameSpeedPpm().least()) + " to "
				+ signed(reading.frameSpeedPpm().most()) + " second by second");
		lines.add("  stamp    " + stamp(reading.userBits()));
		int rows = 0;
		for (Gap gap : reading.gaps()) {
			if (rows++ == MOST_ROWS) {
				lines.add("  gap      and " + (reading.gaps().size() - MOST_ROWS) + " more");
				break;
			}
			lines.add("  gap      " + report.time(gap.beginSample()) + " to " + report.time(gap.endSample()) + ", "
					+ whole((gap.endSample() - gap.beginSample()) * 1000 / report.sampleRate()) + " ms, " + count(gap.lostFrames(), "frame", "frames") + ", "
					+ gap.before().digits() + " to " + gap.after().digits());
		}
		rows = 0;
		for (LabelJump jump : reading.jumps()) {
			if (rows++ == MOST_ROWS) {
				lines.add("  jump     and " + (reading.jumps().size() - MOST_ROWS) + " more");
				break;
			}
			lines.add("  jump     " + report.time(jump.sample()) + ", sample " + Math.round(jump.sample()) + ", " + jump.from().digits() + " to "
					+ jump.to().digits() + ", " + signed(jump.frames()) + " frames");
		}
		for (ImpossibleLabel label : reading.impossible().subList(0, Math.min(MOST_ROWS, reading.impossible().size()))) {
			lines.add("  label    " + label.word().digits() + " at " + report.time(label.sample()) + ", sample " + Math.round(label.sample()) + ": " + label.why());
		}
	}

	private static String stamp(UserBitsFound bits) {
		if (bits.mark().isPresent()) {
			return "slot " + bits.mark().get().slot() + ", " + bits.mark().get().printed() + ", in " + count(bits.marked(), "frame", "frames");
		}
		return bits.sample().isEmpty() ? "none" : "none; the user bits are of another layout, " + bits.sample();
	}
}
