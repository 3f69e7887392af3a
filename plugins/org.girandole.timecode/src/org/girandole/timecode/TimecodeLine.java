package org.girandole.timecode;

import java.util.Objects;
import java.util.Optional;

/**
 * The timecode that runs along one soundtrack. It begins {@code prerollUs} before the first note with the label {@code start} and counts on
 * without a break. Show time is microseconds from the first note, so that the line begins at show time {@code -prerollUs}.
 */
public record TimecodeLine(FrameRate rate, Timecode start, long prerollUs) {

	/** The frame that contains a moment of the show: its label, its number from the line's beginning, and how far into it the moment lies. */
	public record Moment(Timecode label, long frame, ExactMicros remainder) {
	}

	/** @throws TimecodeException if the label counts at another rate or the pre-roll is negative */
	public TimecodeLine {
		Objects.requireNonNull(rate, "rate");
		if (start.rate() != rate) {
			throw new TimecodeException("The start label " + start + " counts at " + start.rate() + ", but the line runs at " + rate);
		}
		if (prerollUs < 0) {
			throw new TimecodeException("A pre-roll of " + prerollUs + " us; expected zero or more");
		}
	}

	/** The frame that contains this show time; empty before the line begins. */
	public Optional<Moment> momentAt(long showUs) {
		long elapsedUs = Math.addExact(showUs, prerollUs);
		if (elapsedUs < 0) {
			return Optional.empty();
		}
		long frame = rate.framesIn(elapsedUs);
		return Optional.of(new Moment(start.plusFrames(frame), frame, ExactMicros.of(elapsedUs).minus(rate.startOf(frame))));
	}

	/**
	 * The label of the frame that contains this show time.
	 *
	 * @throws TimecodeException if the line has not begun by then
	 */
	public Timecode labelAt(long showUs) {
		return momentAt(showUs).map(Moment::label).orElseThrow(() -> new TimecodeException("Show time " + showUs
				+ " us lies before the timecode begins; the line starts at " + -prerollUs + " us, " + start));
	}

	/** When the label's frame begins, in exact show time: its first coming after the line began. */
	public ExactMicros showTimeOf(Timecode label) {
		return startOfFrame(label.framesAfter(start));
	}

	/** The first whole microsecond of show time at which {@link #labelAt} gives this label. */
	public long showUsOf(Timecode label) {
		return showTimeOf(label).ceilUs();
	}

	/** When a frame, counted from the line's beginning, begins in exact show time. */
	public ExactMicros startOfFrame(long frame) {
		return rate.startOf(frame).minus(ExactMicros.of(prerollUs));
	}

	/** The label of the first note: where show time is zero. */
	public Timecode firstNote() {
		return labelAt(0);
	}
}
