package org.girandole.timecode.reader;

/**
 * What signal and noise a set of areas holds of which only the sizes are trusted. Where noise often turns a small area's sign, the mean of the
 * sizes is larger than the signal and their spread smaller than the noise (the folded normal distribution: F. C. Leone, L. S. Nelson and R. B.
 * Nottingham, 1961); taken at face value, noise would look like a signal. This turns the apparent ratio into the true one.
 */
final class FoldedNoise {
	private static final int STEPS = 400;
	private static final double MOST = 8;
	/** For the true ratio of signal to noise amplitude, step by step, the share of the squared mean size in the mean square. */
	private static final double[] SHARES = shares();

	private FoldedNoise() {
	}

	/**
	 * The true power ratio of signal to noise.
	 *
	 * @param mean   mean size of the areas
	 * @param spread variance of the sizes about it
	 */
	static double powerRatio(double mean, double spread) {
		double squares = mean * mean + spread;
		if (squares <= 0) {
			return 0;
		}
		double share = mean * mean / squares;
		if (share >= SHARES[STEPS]) {
			return mean * mean / Math.max(spread, 1e-6 * mean * mean);
		}
		int low = 0;
		int high = STEPS;
		while (high - low > 1) {
			int middle = (low + high) >>> 1;
			if (SHARES[middle] <= share) {
				low = middle;
			} else {
				high = middle;
			}
		}
		double part = SHARES[high] == SHARES[low] ? 0 : Math.max(0, (share - SHARES[low]) / (SHARES[high] - SHARES[low]));
		double ratio = (low + part) * MOST / STEPS;
		return ratio * ratio;
	}

	private static double[] shares() {
		double[] shares = new double[STEPS + 1];
		for (int i = 0; i <= STEPS; i++) {
			double ratio = i * MOST / STEPS;
			double mean = Math.sqrt(2 / Math.PI) * Math.exp(-ratio * ratio / 2) + ratio * errorFunction(ratio / Math.sqrt(2));
			shares[i] = mean * mean / (1 + ratio * ratio);
		}
		return shares;
	}

	/** Abramowitz and Stegun, Handbook of Mathematical Functions, 7.1.26; within 1.5e-7. */
	private static double errorFunction(double x) {
		double t = 1 / (1 + 0.3275911 * x);
		return 1 - t * (0.254829592 + t * (-0.284496736 + t * (1.421413741 + t * (-1.453152027 + t * 1.061405429)))) * Math.exp(-x * x);
	}
}
