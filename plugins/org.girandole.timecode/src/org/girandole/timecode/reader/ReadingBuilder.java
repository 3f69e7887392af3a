package org.girandole.timecode.reader;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;

import org.girandole.timecode.FrameRate;
import org.girandole.timecode.Timecode;
import org.girandole.timecode.ltc.LtcWord;

/** Draws together what the frames of a channel say as a whole. */
final class ReadingBuilder {
	private static final int[] NOMINALS = { 24, 25, 30 };
	/** Half the distance between 29.97 and 30, in parts per million, and a margin. */
	private static final double AMBIGUOUS_PPM = 400;
	private static final int MOST_IMPOSSIBLE = 100;
	/** Behind a gap the label may be so far off, as a part of the gap, before it counts as a jump. */
	private static final double GAP_TOLERANCE = 0.002;
	private static final double GAP_SHARE = 0.5;

	private final FrameTrack frames;
	private final int sampleRate;
	private final long samples;
	private final int[] good;

	private FrameRate rate;

	private ReadingBuilder(FrameTrack frames, int sampleRate, long samples) {
		this.frames = frames;
		this.sampleRate = sampleRate;
		this.samples = samples;
		this.good = IntStream.range(0, frames.size()).filter(i -> frames.quality(i).isGood()).toArray();
	}

	/** The reading; empty if not one frame is good. */
	static Optional<TimecodeReading> build(FrameTrack frames, int sampleRate, long samples) {
		ReadingBuilder builder = new ReadingBuilder(frames, sampleRate, samples);
		return builder.good.length == 0 ? Optional.empty() : Optional.of(builder.build());
	}

	private TimecodeReading build() {
		double measured = measuredRate(0, good.length);
		boolean dropFlag = dropFlag();
		int nominal = nominal(measured);
		rate = rate(nominal, dropFlag, measured);
		double exact = (double) rate.numerator() / rate.denominator();
		double speed = (measured / exact - 1) * 1e6;
		Breaks breaks = breaks();
		List<ImpossibleLabel> impossible = new ArrayList<>();
		UserBitsCounter userBits = new UserBitsCounter();
		int impossibleCount = 0;
		int mended = 0;
		int backwards = 0;
		for (int index : good) {
			LtcFrame frame = frames.get(index);
			userBits.add(frame.word());
			mended += frame.quality() == Quality.MENDED ? 1 : 0;
			backwards += frame.reverse() ? 1 : 0;
			Optional<String> why = impossible(frame.word());
			if (why.isPresent()) {
				impossibleCount++;
				if (impossible.size() < MOST_IMPOSSIBLE) {
					impossible.add(new ImpossibleLabel(frame.begin(), frame.word(), why.get()));
				}
			}
		}
		LtcFrame first = frames.get(good[0]);
		LtcFrame last = frames.get(good[good.length - 1]);
		List<LineSecond> timeline = timeline(exact);
		return new TimecodeReading(rate, rate.dropFrame() || rate.nominal() == 25 || Math.abs(speed) < AMBIGUOUS_PPM,
				backwards == 0 ? TimecodeReading.Direction.FORWARDS
						: backwards == good.length ? TimecodeReading.Direction.BACKWARDS : TimecodeReading.Direction.BOTH,
				dropFlag, dropDisagrees(dropFlag), first.begin(), last.end(), first.word(), last.word(), good.length, mended, frames.size() - good.length,
				breaks.lost, breaks.gaps, breaks.jumps, impossible, impossibleCount, range(Measure.LEVEL), range(Measure.SNR), range(Measure.JITTER), speed,
				speedRange(timeline, speed), userBits.result(), timeline, frames);
	}

	/** Frames a second over the good frames from one to another, counting only where they follow one another. */
	private double measuredRate(int from, int to) {
		double time = 0;
		int count = 0;
		for (int i = from; i + 1 < to; i++) {
			int a = good[i];
			int b = good[i + 1];
			if (b == a + 1 && adjoining(a, b)) {
				time += middle(b) - middle(a);
				count++;
			}
		}
		if (count == 0) {
			int only = good[from];
			return sampleRate / (frames.end(only) - frames.begin(only));
		}
		// An hour of frames times the sample rate is more than an int holds.
		return (double) count * sampleRate / time;
	}

	private double middle(int index) {
		return (frames.begin(index) + frames.end(index)) / 2;
	}

	private boolean adjoining(int a, int b) {
		return frames.begin(b) - frames.end(a) < GAP_SHARE * (frames.end(a) - frames.begin(a));
	}

	private boolean dropFlag() {
		int set = 0;
		for (int index : good) {
			set += frames.get(index).word().dropFrame() ? 1 : 0;
		}
		return 2 * set > good.length;
	}

	/** How many frames a second has, by what its last frame was; without a whole second, by the speed. */
	private int nominal(double measured) {
		int[] seen = new int[30];
		int most = 0;
		for (int i = 0; i + 1 < good.length; i++) {
			LtcFrame a = frames.get(good[i]);
			LtcFrame b = frames.get(good[i + 1]);
			if (adjoining(good[i], good[i + 1])) {
				LtcWord before = a.reverse() ? b.word() : a.word();
				LtcWord after = a.reverse() ? a.word() : b.word();
				if (after.frames() < before.frames() && before.seconds() != after.seconds()) {
					seen[before.frames()]++;
				}
			}
			most = Math.max(most, a.word().frames());
		}
		int best = 0;
		for (int each : NOMINALS) {
			if (seen[each - 1] > 0 && (best == 0 || seen[each - 1] > seen[best - 1])) {
				best = each;
			}
		}
		if (best != 0) {
			return best;
		}
		double nearest = Double.MAX_VALUE;
		for (int each : NOMINALS) {
			double distance = Math.abs(Math.log(measured / each));
			if (each > most && distance < nearest) {
				nearest = distance;
				best = each;
			}
		}
		return best == 0 ? 30 : best;
	}

	private static FrameRate rate(int nominal, boolean drop, double measured) {
		boolean slow = measured / nominal < 1 - 0.0005;
		return switch (nominal) {
			case 24 -> slow ? FrameRate.FPS_23_976 : FrameRate.FPS_24;
			case 25 -> FrameRate.FPS_25;
			default -> drop ? FrameRate.FPS_29_97_DROP : slow ? FrameRate.FPS_29_97 : FrameRate.FPS_30;
		};
	}

	/** True if some minute begins with a label that the drop-frame flag forbids, or leaves out labels without the flag. */
	private boolean dropDisagrees(boolean dropFlag) {
		for (int i = 0; i + 1 < good.length; i++) {
			LtcFrame a = frames.get(good[i]);
			LtcFrame b = frames.get(good[i + 1]);
			LtcWord before = a.reverse() ? b.word() : a.word();
			LtcWord after = a.reverse() ? a.word() : b.word();
			boolean minute = after.seconds() == 0 && before.seconds() == 59 && before.frames() == 29 && after.minutes() % 10 != 0;
			if (minute && adjoining(good[i], good[i + 1]) && after.frames() == (dropFlag ? 0 : 2)) {
				return true;
			}
		}
		return false;
	}

	private Optional<String> impossible(LtcWord word) {
		if (word.frames() >= rate.nominal()) {
			return Optional.of("frame " + word.frames() + " does not exist at " + rate);
		}
		if (rate.dropFrame() && word.label(rate).isEmpty()) {
			return Optional.of("drop-frame counting leaves this label out");
		}
		return Optional.empty();
	}

	private record Breaks(List<Gap> gaps, List<LabelJump> jumps, long lost) {
	}

	private Breaks breaks() {
		List<Gap> gaps = new ArrayList<>();
		List<LabelJump> jumps = new ArrayList<>();
		long lost = 0;
		for (int i = 0; i + 1 < good.length; i++) {
			int at = good[i];
			int next = good[i + 1];
			LtcFrame a = frames.get(at);
			LtcFrame b = frames.get(next);
			double length = (a.length() + b.length()) / 2;
			long steps = Math.max(1, Math.round((middle(next) - middle(at)) / length));
			boolean gap = !adjoining(at, next);
			long ahead = ahead(a, b, steps);
			boolean goesOn = Math.abs(ahead) <= (steps > 3 ? 1 + GAP_TOLERANCE * steps : 0) && a.reverse() == b.reverse();
			if (gap) {
				gaps.add(new Gap(a.end(), b.begin(), steps - 1, next - at - 1, a.word(), b.word(), goesOn));
				lost += steps - 1;
			}
			if (!goesOn) {
				jumps.add(new LabelJump(b.begin(), a.word(), b.word(), ahead));
			}
		}
		return new Breaks(gaps, jumps, lost);
	}

	/** How many frames the second label is ahead of the one that is due so many steps behind the first; within half a day. */
	private long ahead(LtcFrame a, LtcFrame b, long steps) {
		int day = rate.framesPerDay();
		long due = a.reverse() ? -steps : steps;
		long distance = Math.floorMod(number(b.word()) - number(a.word()) - due, (long) day);
		return distance > day / 2 ? distance - day : distance;
	}

	/** The frame number of a label; of one that cannot exist, the number of the nearest that does. */
	private long number(LtcWord word) {
		int last = Math.min(word.frames(), rate.nominal() - 1);
		int frame = Timecode.exists(word.hours(), word.minutes(), word.seconds(), last, rate) ? last : 2;
		long extra = word.frames() - frame;
		return new Timecode(word.hours(), word.minutes(), word.seconds(), frame, rate).frameOfDay() + extra;
	}

	private enum Measure {
		LEVEL, SNR, JITTER
	}

	private Range range(Measure measure) {
		double least = Double.MAX_VALUE;
		double most = -Double.MAX_VALUE;
		double sum = 0;
		for (int index : good) {
			LtcFrame frame = frames.get(index);
			double value = switch (measure) {
				case LEVEL -> frame.levelDbfs();
				case SNR -> frame.snrDb();
				case JITTER -> frame.jitterUs();
			};
			least = Math.min(least, value);
			most = Math.max(most, value);
			sum += value;
		}
		return new Range(least, sum / good.length, most);
	}

	private List<LineSecond> timeline(double exact) {
		List<LineSecond> moments = new ArrayList<>();
		int at = 0;
		long seconds = (samples + sampleRate - 1) / sampleRate;
		for (long second = 0; second < seconds; second++) {
			double from = (double) second * sampleRate;
			double to = Math.min(samples, from + sampleRate);
			int begin = at;
			double covered = 0;
			double level = 0;
			double ratio = 0;
			// A frame that reaches over the end belongs to both seconds.
			int end = begin;
			while (end < good.length && frames.begin(good[end]) < to) {
				LtcFrame frame = frames.get(good[end]);
				covered += Math.max(0, Math.min(to, frame.end()) - Math.max(from, frame.begin()));
				level += frame.levelDbfs();
				ratio += frame.snrDb();
				end++;
			}
			int count = end - begin;
			moments.add(count == 0 ? new LineSecond(second, 0, Double.NaN, Double.NaN, Double.NaN)
					: new LineSecond(second, Math.min(1, covered / (to - from)), level / count, count < 2 ? Double.NaN : (measuredRate(begin, end) / exact - 1) * 1e6, ratio / count));
			while (at < end && frames.end(good[at]) <= to) {
				at++;
			}
		}
		return moments;
	}

	private static Range speedRange(List<LineSecond> timeline, double mean) {
		double least = mean;
		double most = mean;
		for (LineSecond moment : timeline) {
			if (!Double.isNaN(moment.speedPpm())) {
				least = Math.min(least, moment.speedPpm());
				most = Math.max(most, moment.speedPpm());
			}
		}
		return new Range(least, mean, most);
	}
}
