package org.girandole.timecode.reader;

/**
 * The stretch of a recording that is being looked at, kept as running sums: the integral of the signal between any two moments is then one
 * subtraction, however long the stretch. Each sample is taken to last from half a sample before its place to half a sample behind it.
 * Positions count samples from the beginning of the recording.
 */
final class SampleWindow {
	private final double[] sums;
	private int held;
	private long first;

	/** @param first the place of the first sample to come */
	SampleWindow(int capacity, long first) {
		this.sums = new double[capacity + 2];
		this.first = first;
	}

	/** The place of the first sample that is still held. */
	long first() {
		return first;
	}

	/** The place behind the last sample. */
	long end() {
		return first + held;
	}

	int room() {
		return sums.length - 2 - held;
	}

	/** Takes in samples, {@code stride} places apart in the array. */
	void append(float[] samples, int offset, int count, int stride) {
		double[] to = sums;
		int at = held;
		double sum = to[at];
		int from = offset;
		int end = held + count;
		// By fours, so that a sum does not wait for each single one before it.
		for (; at + 4 <= end; at += 4, from += 4 * stride) {
			double one = samples[from];
			double two = one + samples[from + stride];
			double three = two + samples[from + 2 * stride];
			double four = three + samples[from + 3 * stride];
			to[at + 1] = sum + one;
			to[at + 2] = sum + two;
			to[at + 3] = sum + three;
			sum += four;
			to[at + 4] = sum;
		}
		for (; at < end; at++, from += stride) {
			sum += samples[from];
			to[at + 1] = sum;
		}
		held = end;
	}

	/** Lets go of everything before a place. The sums go on as they were, so that those already taken stay comparable. */
	void forgetBefore(long place) {
		int drop = (int) Math.max(0, Math.min(place - first, held));
		if (drop == 0) {
			return;
		}
		System.arraycopy(sums, drop, sums, 0, held + 1 - drop);
		held -= drop;
		first += drop;
	}

	/** The integral of the signal up to a moment; only differences mean anything. The moment must lie within what is held. */
	double integral(double place) {
		double at = place - first + 0.5;
		int whole = (int) at;
		double low = sums[whole];
		return low + (at - whole) * (sums[whole + 1] - low);
	}

	/** True if the integral can be had at this moment. */
	boolean holds(double place) {
		double at = place - first + 0.5;
		return at >= 0 && at < held;
	}

	/** A window over the samples between two places, played backwards: its sample 0 is the last of them. */
	SampleWindow reversed(long from, long to) {
		int count = (int) (to - from);
		SampleWindow back = new SampleWindow(count, 0);
		int top = (int) (to - first);
		for (int i = 0; i < count; i++) {
			back.sums[i + 1] = back.sums[i] + sums[top - i] - sums[top - i - 1];
		}
		back.held = count;
		return back;
	}
}
