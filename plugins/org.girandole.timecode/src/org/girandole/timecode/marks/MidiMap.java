package org.girandole.timecode.marks;

import java.math.BigInteger;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;

import org.girandole.timecode.TimecodeException;

/**
 * What a Standard MIDI File says about time: tempo, meters and marks. Places in the music count ticks, marks count microseconds; the way between
 * is exact, in fractions.
 *
 * @param ticksPerQuarter 1 to 32 767
 * @param tempos          ordered by tick; before the first 120 quarter notes a minute hold
 * @param meters          ordered by tick; before the first 4/4 holds
 * @param marks           ordered by time
 */
public record MidiMap(int ticksPerQuarter, List<TempoChange> tempos, List<MeterChange> meters, List<Mark> marks) {
	/** Divides by all usual parts of a beat. */
	public static final int USUAL_TICKS = 960;

	public MidiMap {
		if (ticksPerQuarter < 1 || ticksPerQuarter > 0x7FFF) {
			throw new TimecodeException(ticksPerQuarter + " ticks a quarter note; expected 1 to 32767");
		}
		tempos = sorted(tempos, Comparator.comparingLong(TempoChange::tick));
		meters = sorted(meters, Comparator.comparingLong(MeterChange::tick));
		marks = sorted(marks, Comparator.comparingLong(Mark::timeUs));
	}

	private static <T> List<T> sorted(List<T> list, Comparator<T> order) {
		List<T> copy = new ArrayList<>(list);
		copy.sort(order);
		return List.copyOf(copy);
	}

	/** The time of a tick, to the nearest microsecond, halves upwards. */
	public long timeOf(long tick) {
		// In microseconds times ticks a quarter note, which is whole.
		BigInteger sum = BigInteger.ZERO;
		long from = 0;
		int tempo = TempoChange.DEFAULT;
		for (TempoChange change : tempos) {
			if (change.tick() >= tick) {
				break;
			}
			sum = sum.add(BigInteger.valueOf(change.tick() - from).multiply(BigInteger.valueOf(tempo)));
			from = change.tick();
			tempo = change.usPerQuarter();
		}
		sum = sum.add(BigInteger.valueOf(tick - from).multiply(BigInteger.valueOf(tempo)));
		return rounded(sum, ticksPerQuarter);
	}

	/** The tick nearest to a time. */
	public long tickAt(long timeUs) {
		BigInteger left = BigInteger.valueOf(timeUs).multiply(BigInteger.valueOf(ticksPerQuarter));
		long from = 0;
		int tempo = TempoChange.DEFAULT;
		for (TempoChange change : tempos) {
			BigInteger stretch = BigInteger.valueOf(change.tick() - from).multiply(BigInteger.valueOf(tempo));
			if (stretch.compareTo(left) > 0) {
				break;
			}
			left = left.subtract(stretch);
			from = change.tick();
			tempo = change.usPerQuarter();
		}
		return from + rounded(left, tempo);
	}

	private static long rounded(BigInteger numerator, long denominator) {
		return numerator.shiftLeft(1).add(BigInteger.valueOf(denominator)).divide(BigInteger.valueOf(2 * denominator)).longValueExact();
	}

	/** Starts a map whose music begins so long after the file's beginning. */
	public static Builder beginningAfter(long leadInUs) {
		return new Builder(leadInUs);
	}

	/**
	 * Builds a map from musical places. The lead-in before the first bar is filled with quarter notes whose lengths add up to it exactly, so that
	 * the first bar begins on its microsecond.
	 */
	public static final class Builder {
		private static final int LEAD_IN_QUARTER_US = 1_000_000;

		private final List<TempoChange> tempos = new ArrayList<>();
		private final List<MeterChange> meters = new ArrayList<>();
		private final List<Mark> marks = new ArrayList<>();
		private final long firstTick;

		private Builder(long leadInUs) {
			if (leadInUs < 0) {
				throw new TimecodeException("A lead-in of " + leadInUs + " us; expected none below zero");
			}
			long whole = Math.max(0, leadInUs / LEAD_IN_QUARTER_US - 1);
			long last = leadInUs - whole * LEAD_IN_QUARTER_US;
			if (whole > 0) {
				tempos.add(new TempoChange(0, LEAD_IN_QUARTER_US));
			}
			if (last > 0) {
				tempos.add(new TempoChange(whole * USUAL_TICKS, (int) last));
			}
			firstTick = leadInUs == 0 ? 0 : (whole + 1) * USUAL_TICKS;
		}

		/**
		 * A tempo from a place on.
		 *
		 * @param quarters     quarter notes from the first bar, as a fraction of {@code quartersParts}
		 * @param usPerQuarter rounded to whole microseconds by whoever asks
		 */
		public Builder tempo(long quarters, long quartersParts, long usPerQuarter) {
			if (usPerQuarter < 1 || usPerQuarter > TempoChange.SLOWEST) {
				throw new TimecodeException("A quarter note of " + usPerQuarter + " us cannot be written to a Standard MIDI File; expected 1 to " + TempoChange.SLOWEST);
			}
			tempos.add(new TempoChange(tick(quarters, quartersParts), (int) usPerQuarter));
			return this;
		}

		/** A meter from a place on. */
		public Builder meter(long quarters, long quartersParts, int beats, int unit) {
			meters.add(new MeterChange(tick(quarters, quartersParts), beats, unit));
			return this;
		}

		/** A mark, by its time from the file's beginning. */
		public Builder mark(Mark mark) {
			marks.add(mark);
			return this;
		}

		public MidiMap build() {
			return new MidiMap(USUAL_TICKS, tempos, meters, marks);
		}

		private long tick(long quarters, long parts) {
			return firstTick + rounded(BigInteger.valueOf(quarters).multiply(BigInteger.valueOf(USUAL_TICKS)), parts);
		}
	}
}
