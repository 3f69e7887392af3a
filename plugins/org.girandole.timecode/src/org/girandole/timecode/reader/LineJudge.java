package org.girandole.timecode.reader;

import static org.girandole.timecode.reader.LineText.count;
import static org.girandole.timecode.reader.LineText.one;
import static org.girandole.timecode.reader.LineText.signed;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;

import org.girandole.timecode.FrameRate;
import org.girandole.timecode.Timecode;
import org.girandole.timecode.TimecodeLine;
import org.girandole.timecode.ltc.ReleaseMark;
import org.girandole.timecode.reader.LineVerdict.Fitness;
import org.girandole.timecode.reader.LineVerdict.Reason;
import org.girandole.timecode.reader.LineVerdict.Weight;

/** Holds a report against what the line ought to be. What is not known is said, and never counts in the line's favour. */
public final class LineJudge {
	private final LineReport report;
	private final LineExpectation expected;
	private final LineDemands demands;
	private final List<Reason> reasons = new ArrayList<>();

	private LineJudge(LineReport report, LineExpectation expected, LineDemands demands) {
		this.report = report;
		this.expected = expected;
		this.demands = demands;
	}

	public static LineVerdict judge(LineReport report, LineExpectation expected, LineDemands demands) {
		return new LineJudge(report, expected, demands).judge();
	}

	private LineVerdict judge() {
		report.warnings().forEach(warning -> add(Weight.CARE, warning));
		Optional<ChannelReport> channel = report.timecodeChannel();
		if (channel.isEmpty()) {
			add(Weight.AGAINST, "No timecode was found on " + count(report.channels().size(), "channel", "channels") + ": " + whatElse());
		} else {
			judge(channel.get(), channel.get().timecode().orElseThrow());
		}
		reasons.sort(Comparator.comparing(Reason::weight));
		boolean against = reasons.stream().anyMatch(reason -> reason.weight() == Weight.AGAINST);
		boolean care = reasons.stream().anyMatch(reason -> reason.weight() == Weight.CARE);
		Fitness clean = expected.line().isPresent() ? Fitness.FIT : Fitness.FIT_AS_SIGNAL;
		return new LineVerdict(against ? Fitness.UNFIT : care ? Fitness.WITH_CARE : clean, reasons);
	}

	private String whatElse() {
		boolean silent = report.channels().stream().allMatch(channel -> channel.audio().rmsDbfs() < -80);
		if (report.sampleFrames() == 0) {
			return "the recording is empty";
		}
		return silent ? "the recording is silent" : "there is sound, but it is not timecode";
	}

	private void add(Weight weight, String text) {
		reasons.add(new Reason(weight, text));
	}

	private void judge(ChannelReport channel, TimecodeReading reading) {
		lock(reading);
		identity(reading);
		mark(reading.userBits());
		losses(reading);
		signal(channel.audio(), reading);
		speed(reading);
		others(channel);
	}

	private void lock(TimecodeReading reading) {
		double at = reading.firstLock() / report.sampleRate();
		String where = "The first frame, " + reading.first().digits() + ", is read at " + report.time(reading.firstLock());
		if (at > demands.lockSeconds()) {
			add(Weight.CARE, where + ": timecode does not run from the recording's beginning");
		} else {
			add(Weight.FOR, where);
		}
		double end = (double) report.sampleFrames() / report.sampleRate() - reading.lastGood() / report.sampleRate();
		if (end > demands.lockSeconds()) {
			add(Weight.CARE, "The last frame, " + reading.last().digits() + ", ends at " + report.time(reading.lastGood()) + ", " + one(end)
					+ " s before the recording does");
		}
		if (reading.directions() != TimecodeReading.Direction.FORWARDS) {
			add(Weight.AGAINST, reading.directions() == TimecodeReading.Direction.BACKWARDS ? "The timecode runs backwards" : "The timecode runs both ways");
		}
	}

	private void identity(TimecodeReading reading) {
		FrameRate rate = reading.rate();
		if (reading.dropDisagrees()) {
			add(Weight.AGAINST, "The drop-frame flag says " + (reading.dropFlag() ? "drop-frame" : "non-drop") + ", but the labels are counted the other way");
		}
		if (reading.impossibleCount() > 0) {
			ImpossibleLabel first = reading.impossible().get(0);
			add(Weight.AGAINST, count(reading.impossibleCount(), "label", "labels") + " cannot exist; the first is " + first.word().digits() + " at sample "
					+ Math.round(first.sample()) + ": " + first.why());
		}
		if (expected.line().isEmpty()) {
			String sure = reading.rateCertain() ? "" : "; at this speed it cannot be told from its neighbour";
			add(Weight.UNKNOWN, "The rate is " + rate + sure + "; which show it should be is not known");
			return;
		}
		TimecodeLine line = expected.line().get();
		if (!sameRate(rate, line.rate(), reading)) {
			add(Weight.AGAINST, "The rate is " + rate + ", but the show's is " + line.rate());
			return;
		}
		add(Weight.FOR, "The rate is the show's, " + line.rate());
		range(reading, line);
	}

	/** Where the speed does not tell 29.97 from 30, or 23.976 from 24, the show's own rate has the benefit of it: the speed is judged anyway. */
	private static boolean sameRate(FrameRate found, FrameRate wanted, TimecodeReading reading) {
		return found == wanted || !reading.rateCertain() && found.nominal() == wanted.nominal() && found.dropFrame() == wanted.dropFrame();
	}

	private void range(TimecodeReading reading, TimecodeLine line) {
		Optional<Timecode> first = reading.first().label(line.rate());
		if (first.isEmpty()) {
			return;
		}
		long into = first.get().framesAfter(line.start());
		long needed = line.rate().framesIn(line.prerollUs() + expected.lengthUs());
		if (into > needed && expected.lengthUs() > 0) {
			add(Weight.AGAINST, "The labels, from " + reading.first().digits() + " on, are not the show's, which begin with " + line.start());
			return;
		}
		String begins = into == 0 ? "The labels begin with the show's first, " + line.start()
				: "The labels begin " + count(into, "frame", "frames") + " into the show's line, which starts with " + line.start();
		boolean tooLate = into > line.rate().framesIn(line.prerollUs());
		add(tooLate ? Weight.CARE : Weight.FOR, tooLate ? begins + "; the pre-roll is missing" : begins);
		if (expected.lengthUs() > 0) {
			reach(reading, line, needed);
		}
	}

	private void reach(TimecodeReading reading, TimecodeLine line, long needed) {
		long last = reading.last().label(line.rate()).map(label -> (long) label.framesAfter(line.start())).orElse(0L);
		if (last < needed) {
			add(Weight.CARE, "The labels end with " + reading.last().digits() + ", before the show does, at " + line.start().plusFrames(needed));
		} else {
			add(Weight.FOR, "The labels reach beyond the end of the show, " + line.start().plusFrames(needed));
		}
	}

	private void mark(UserBitsFound bits) {
		if (bits.mark().isEmpty()) {
			String none = bits.empty() > 0 && bits.sample().isEmpty() ? "The user bits are empty" : "The user bits hold no slot and stamp";
			add(expected.mark().isPresent() ? Weight.CARE : Weight.UNKNOWN, none + ": whose timecode this is cannot be told");
			return;
		}
		ReleaseMark found = bits.mark().get();
		String says = "slot " + found.slot() + ", stamp " + found.printed();
		if (expected.mark().isEmpty()) {
			add(Weight.UNKNOWN, "The user bits say " + says + "; which they should be is not known");
		} else if (expected.mark().get().equals(found)) {
			add(Weight.FOR, "The user bits are this release's: " + says);
		} else {
			ReleaseMark wanted = expected.mark().get();
			add(Weight.AGAINST, "The user bits say " + says + ", but this release is slot " + wanted.slot() + ", stamp " + wanted.printed());
		}
		if (bits.foreign() > 0) {
			add(Weight.CARE, count(bits.foreign(), "frame carries", "frames carry") + " another slot or stamp");
		}
	}

	private void losses(TimecodeReading reading) {
		if (reading.gaps().isEmpty()) {
			add(Weight.FOR, "Not one of " + count(reading.goodFrames(), "frame", "frames") + " is lost");
		} else {
			Gap longest = reading.longestGap().orElseThrow();
			double seconds = (longest.endSample() - longest.beginSample()) / report.sampleRate();
			double share = (double) reading.lostFrames() / (reading.lostFrames() + reading.goodFrames());
			boolean unfit = seconds > demands.mostGapSeconds() || share > demands.mostLostShare();
			add(unfit ? Weight.AGAINST : Weight.CARE, count(reading.lostFrames(), "frame", "frames") + " lost in " + count(reading.gaps().size(), "gap", "gaps")
					+ "; the longest, " + one(seconds * 1000) + " ms, begins at " + report.time(longest.beginSample()));
		}
		if (!reading.jumps().isEmpty()) {
			LabelJump first = reading.jumps().get(0);
			add(Weight.AGAINST, "The labels jump " + count(reading.jumps().size(), "time", "times") + "; first at " + report.time(first.sample()) + ", from "
					+ first.from().digits() + " to " + first.to().digits());
		}
		if (reading.doubtfulFrames() > 0) {
			add(Weight.CARE, count(reading.doubtfulFrames(), "frame was", "frames were") + " there but could not be trusted");
		}
	}

	private void signal(ChannelAudio audio, TimecodeReading reading) {
		double level = reading.levelDbfs().mean();
		String levels = "The level is " + one(level) + " dBFS, " + one(reading.levelDbfs().least()) + " to " + one(reading.levelDbfs().most());
		add(level < demands.quietDbfs() ? Weight.CARE : Weight.FOR, level < demands.quietDbfs() ? levels + ": quiet" : levels);
		if (audio.clippedSamples() > 0) {
			add(Weight.CARE, count(audio.clippedSamples(), "sample is", "samples are") + " cut off at full scale: turn the recorder or the line down");
		}
		double worst = reading.timeline().stream().filter(this::counts).mapToDouble(LineSecond::snrDb).filter(Double::isFinite).min().orElse(reading.snrDb().least());
		String noise = "Noise and distortion lie " + one(reading.snrDb().mean()) + " dB below the signal, " + one(worst) + " dB in the worst second";
		if (worst < demands.leastSnrDb()) {
			add(Weight.AGAINST, noise + ": a reader that goes by edges loses this line");
		} else if (worst < demands.goodSnrDb()) {
			add(Weight.CARE, noise + ": a reader that goes by edges may lose frames");
		} else {
			add(Weight.FOR, noise);
		}
	}

	/** The recording's last second may be so short that the closing frame alone would stand for it; the others count whole. */
	private boolean counts(LineSecond second) {
		return report.sampleFrames() - second.second() * (double) report.sampleRate() >= report.sampleRate() / 2.0;
	}

	private void speed(TimecodeReading reading) {
		double ppm = reading.speedPpmAgainst(expected.line().map(TimecodeLine::rate).filter(rate -> sameRate(reading.rate(), rate, reading)).orElse(reading.rate()));
		double size = Math.abs(ppm);
		String speed = "The speed is " + signed(ppm) + " parts per million off";
		if (size > demands.fairPpm()) {
			add(size > demands.mostPpm() ? Weight.AGAINST : Weight.CARE, speed + ", " + one(size * 60 / 1000) + " ms a minute " + (ppm > 0 ? "fast" : "slow"));
		} else {
			add(Weight.FOR, speed);
		}
		double wow = Math.max(reading.frameSpeedPpm().most() - reading.speedPpm(), reading.speedPpm() - reading.frameSpeedPpm().least());
		if (wow > demands.fairWowPpm()) {
			add(Weight.CARE, "The speed wavers by up to " + LineText.whole(wow) + " parts per million from second to second");
		}
	}

	private void others(ChannelReport best) {
		for (ChannelReport other : report.channels()) {
			if (other != best && other.timecode().isPresent()) {
				add(Weight.CARE, "There is timecode on channel " + other.channel() + " too, from " + other.timecode().get().first().digits()
						+ ": it may leak, or the line may be patched twice");
			}
		}
	}
}
