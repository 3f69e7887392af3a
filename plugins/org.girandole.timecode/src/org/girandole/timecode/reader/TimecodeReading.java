package org.girandole.timecode.reader;

import java.util.List;
import java.util.Optional;

import org.girandole.timecode.FrameRate;
import org.girandole.timecode.ltc.LtcWord;

/**
 * The timecode found on a channel. Positions are samples from the recording's beginning.
 *
 * @param rate           the rate, as far as labels, drop-frame flag and speed tell
 * @param rateCertain    false if the speed lies so far off that the two rates of the same count, as 29.97 and 30, cannot be told apart
 * @param directions     forwards, backwards, or both
 * @param dropFlag       the drop-frame flag is set in most words
 * @param dropDisagrees  flag and counting disagree at a minute
 * @param firstLock      where the first good frame begins
 * @param lastGood       where the last good frame ends
 * @param first          label of the first good frame
 * @param last           label of the last good frame
 * @param goodFrames     frames with a good label, mended ones among them
 * @param lostFrames     frames missing in all gaps
 * @param gaps           in order
 * @param jumps          in order
 * @param impossible     the first of the impossible labels, in order
 * @param impossibleCount how many there were
 * @param levelDbfs      peak level of the signal
 * @param snrDb          signal to noise and distortion, on half bit cells
 * @param jitterUs       of the transitions
 * @param speedPpm       deviation of the whole recording's speed from the rate, in parts per million
 * @param frameSpeedPpm  the same second by second: wow and flutter show in its width
 * @param userBits       what the user bits say
 * @param timeline       second by second
 * @param frames         every frame
 */
public record TimecodeReading(FrameRate rate, boolean rateCertain, Direction directions, boolean dropFlag, boolean dropDisagrees, double firstLock,
		double lastGood, LtcWord first, LtcWord last, int goodFrames, int mendedFrames, int doubtfulFrames, long lostFrames, List<Gap> gaps,
		List<LabelJump> jumps, List<ImpossibleLabel> impossible, int impossibleCount, Range levelDbfs, Range snrDb, Range jitterUs, double speedPpm,
		Range frameSpeedPpm, UserBitsFound userBits, List<LineSecond> timeline, FrameTrack frames) {

	/** Which way the recording runs. */
	public enum Direction {
		FORWARDS, BACKWARDS, BOTH
	}

	public TimecodeReading {
		gaps = List.copyOf(gaps);
		jumps = List.copyOf(jumps);
		impossible = List.copyOf(impossible);
		timeline = List.copyOf(timeline);
	}

	/** The longest gap; empty without any. */
	public Optional<Gap> longestGap() {
		return gaps.stream().max((a, b) -> Double.compare(a.endSample() - a.beginSample(), b.endSample() - b.beginSample()));
	}

	/** The deviation of the speed, in parts per million, if the rate should be this one. */
	public double speedPpmAgainst(FrameRate should) {
		double found = (double) rate.numerator() / rate.denominator();
		double wanted = (double) should.numerator() / should.denominator();
		return ((1 + speedPpm / 1e6) * found / wanted - 1) * 1e6;
	}
}
