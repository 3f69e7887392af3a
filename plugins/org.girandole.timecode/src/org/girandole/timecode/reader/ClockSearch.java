package org.girandole.timecode.reader;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;

import org.jtransforms.fft.FloatFFT_1D;

/**
 * Looks for the bit clock in a stretch of recording of which nothing is known. Bi-phase mark has a transition at the beginning of every cell, so
 * the energy of the signal's steps repeats with the cells: a line in its spectrum, standing high above noise, and its phase tells where
 * the cells begin.
 */
final class ClockSearch {
	/** Half the slowest rate (24 frames a second) and a little less; twice the fastest (30) and a little more. */
	static final double LEAST_BITS_PER_SECOND = 0.48 * 24 * 80;
	static final double MOST_BITS_PER_SECOND = 2.05 * 30 * 80;

	private static final int POINTS = 2048;
	private static final double POINTS_PER_SECOND = 16_000;
	private static final int MOST_CANDIDATES = 5;
	/** How far a line must stand above the mean of its surroundings, as a power ratio. */
	private static final double LEAST_PROMINENCE = 8;

	private final int grid;
	private final double pointsPerSecond;
	private final int[] reaches;
	private final float[] spectrum = new float[POINTS];
	private final float[] taper = new float[POINTS];
	private final FloatFFT_1D transform = new FloatFFT_1D(POINTS);
	private final double[] power = new double[POINTS / 2];

	/** A clock that may be there: where a cell begins and how long cells are, in samples. */
	record Clock(double begin, double length, double power) {
	}

	ClockSearch(int sampleRate) {
		this.grid = (int) Math.max(1, Math.round(sampleRate / POINTS_PER_SECOND));
		this.pointsPerSecond = (double) sampleRate / grid;
		// Half a cell at about 2200 bits a second, and at the fastest.
		this.reaches = new int[] { (int) Math.max(2, Math.round(sampleRate / 4400.0)), (int) Math.max(1, Math.round(sampleRate / 9600.0)) };
		for (int i = 0; i < POINTS; i++) {
			taper[i] = (float) (0.5 - 0.5 * Math.cos(2 * Math.PI * (i + 0.5) / POINTS));
		}
	}

	/** Samples that are looked at from a place on, with those needed before and behind. */
	int samples() {
		return POINTS * grid + 2 * margin();
	}

	int margin() {
		return reaches[0] + 2;
	}

	/** The clocks that may be there in the samples from a place on, the likeliest first; none if nothing repeats. */
	List<Clock> search(SampleWindow window, long from) {
		List<Clock> found = new ArrayList<>();
		for (int reach : reaches) {
			stepEnergy(window, from + margin(), reach);
			found.addAll(lines(from + margin()));
		}
		found.sort(Comparator.comparingDouble(Clock::power).reversed());
		List<Clock> distinct = new ArrayList<>();
		for (Clock clock : found) {
			if (distinct.stream().noneMatch(other -> Math.abs(other.length / clock.length - 1) < 0.004) && distinct.size() < MOST_CANDIDATES) {
				distinct.add(clock);
			}
		}
		return distinct;
	}

	private void stepEnergy(SampleWindow window, long from, int reach) {
		float mean = 0;
		for (int i = 0; i < POINTS; i++) {
			// Half a sample on, the integral falls on stored sums.
			double at = from + (double) i * grid - 0.5;
			double middle = window.integral(at);
			float step = (float) (window.integral(at + reach) - 2 * middle + window.integral(at - reach));
			spectrum[i] = step * step;
			mean += spectrum[i];
		}
		mean /= POINTS;
		for (int i = 0; i < POINTS; i++) {
			spectrum[i] = (spectrum[i] - mean) * taper[i];
		}
		transform.realForward(spectrum);
	}

	private List<Clock> lines(long from) {
		List<Clock> clocks = new ArrayList<>();
		double total = 1e-30;
		for (int k = 1; k < power.length; k++) {
			power[k] = spectrum[2 * k] * spectrum[2 * k] + spectrum[2 * k + 1] * spectrum[2 * k + 1];
			total += power[k];
		}
		double mean = total / power.length;
		int first = bin(LEAST_BITS_PER_SECOND);
		int last = Math.min(power.length - 2, bin(MOST_BITS_PER_SECOND));
		for (int k = first; k <= last; k++) {
			if (power[k] > power[k - 1] && power[k] >= power[k + 1] && power[k] > LEAST_PROMINENCE * mean) {
				clocks.add(clock(k, from, total));
			}
		}
		return clocks;
	}

	private int bin(double hertz) {
		return (int) (hertz / pointsPerSecond * POINTS);
	}

	private Clock clock(int k, long from, double total) {
		// The peak of a Hann line between bins, by the parabola through the logarithms of three of them.
		double a = Math.log(power[k - 1] + 1e-30);
		double b = Math.log(power[k] + 1e-30);
		double c = Math.log(power[k + 1] + 1e-30);
		double shift = a + c - 2 * b == 0 ? 0 : Math.max(-0.5, Math.min(0.5, (a - c) / (2 * (a + c - 2 * b))));
		double length = grid * POINTS / (k + shift);
		// The taper is symmetric: about its middle the phase of the bin is the phase of the line, wherever between bins the line lies.
		double middle = (POINTS - 1) / 2.0;
		double phase = -(Math.atan2(spectrum[2 * k + 1], spectrum[2 * k]) + 2 * Math.PI * k * middle / POINTS);
		double crest = middle * grid + Math.IEEEremainder(phase, 2 * Math.PI) / (2 * Math.PI) * length;
		return new Clock(from + crest - 0.5, length, power[k] / total);
	}
}
