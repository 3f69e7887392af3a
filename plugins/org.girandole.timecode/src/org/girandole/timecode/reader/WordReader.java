package org.girandole.timecode.reader;

import org.girandole.timecode.ltc.LtcWord;

/**
 * Takes words out of followed cells. The sync word is found by correlation over its 32 half cells, forwards and backwards; the data bits are
 * weighed together, because in bi-phase mark each cell's beginning hangs on the end of the one before: the two paths through every cell,
 * from the sync word before to the sync word behind, are added up from both sides (the max-log form of the algorithm of Bahl, Cocke, Jelinek
 * and Raviv, 1974), which leaves for each bit the odds that it is a one.
 */
final class WordReader {
	static final int SYNC_CELLS = 16;
	private static final int HALVES = 2 * LtcWord.BITS;
	private static final int SYNC_HALVES = 2 * SYNC_CELLS;
	private static final int SYNC_BITS = 0xBFFC;
	private static final float[] FORWARD = levels(SYNC_BITS, false);
	private static final float[] BACKWARD = levels(SYNC_BITS, true);
	/** However clean a recording, its bits are never taken for surer than at this power ratio of signal to noise. */
	private static final double MOST_TRUSTED_RATIO = 45;

	private static final double POOR_RATIO = 16;
	private static final int REACH = CellTracker.BASELINE_CELLS;
	private static final int MOST_CELLS = SYNC_CELLS + LtcWord.BITS + 2 * REACH;

	private final CellTracker cells;
	private final double microsPerSample;
	private final float[] areas = new float[2 * MOST_CELLS];
	private final double[] places = new double[MOST_CELLS + 1];
	private final double[] running = new double[MOST_CELLS + 1];
	private final float[] baseline = new float[MOST_CELLS];
	private final float[] halves = new float[HALVES + SYNC_HALVES];
	private final float[] pathsPlus = new float[LtcWord.DATA_BITS + 1];
	private final float[] pathsMinus = new float[LtcWord.DATA_BITS + 1];
	private double area;
	private double spread;

	WordReader(CellTracker cells, int sampleRate) {
		this.cells = cells;
		this.microsPerSample = 1e6 / sampleRate;
	}

	/** How well a sync word played forwards fits the sixteen cells from this one on; negative when it is played backwards and fits better so. */
	double syncAt(long cell) {
		takeAreas(cell, SYNC_CELLS);
		takeOff(SYNC_CELLS);
		float forward = 0;
		float backward = 0;
		float total = 1e-20f;
		for (int i = 0; i < SYNC_HALVES; i++) {
			forward += halves[i] * FORWARD[i];
			backward += halves[i] * BACKWARD[i];
			total += Math.abs(halves[i]);
		}
		forward = Math.abs(forward) / total;
		backward = Math.abs(backward) / total;
		return forward >= backward ? forward : -backward;
	}

	/**
	 * Reads the 80 cells from this one on as a word.
	 *
	 * @param known how many cells before it are still remembered; with sixteen and more the sync word before it is used too
	 */
	SoftWord read(long cell, boolean reverse, long known) {
		boolean syncBefore = !reverse && known >= SYNC_CELLS + REACH;
		int lead = syncBefore ? SYNC_CELLS : 0;
		int count = LtcWord.BITS + lead;
		takeAreas(cell - lead, count);
		takeOff(count);
		int from = 2 * lead;
		takeBaselineOff(count);
		double ratio = ratio(from);
		if (ratio < POOR_RATIO) {
			ratio = tryPlainMean(count, from, ratio);
		}
		double jitter = jitterUs(cell, lead);
		double height = height(cell, lead);
		if (reverse) {
			reverse(halves, HALVES);
		}
		int syncFrom = from + 2 * LtcWord.DATA_BITS;
		double trusted = Math.min(ratio, MOST_TRUSTED_RATIO);
		// Amplitude over noise power; the two powers together are the mean square.
		double scale = Math.sqrt(trusted * (1 + trusted) / (area * area + spread + 1e-30));
		float behind = correlation(syncFrom);
		float[] ones = weigh(from, syncBefore ? correlation(0) : 0, behind, (float) scale);
		double sync = Math.abs(behind) / (SYNC_HALVES * mean(syncFrom, syncFrom + SYNC_HALVES) + 1e-20);
		return new SoftWord(cells.boundaryOf(cell), cells.boundaryOf(cell + LtcWord.BITS), reverse, SoftWord.mostLikely(ones), ones, sync, height,
				ratio, jitter);
	}

	/** A word may be so distorted that its levels are misjudged: then the plain mean of the cells around serves better as baseline. */
	private double tryPlainMean(int count, int from, double ratio) {
		sumAreas(count);
		takeOff(count);
		double plain = ratio(from);
		if (plain > ratio) {
			return plain;
		}
		takeBaselineOff(count);
		return ratio(from);
	}

	/** The power ratio of signal to noise in the word's areas as they are now; leaves their mean size and spread behind. */
	private double ratio(int from) {
		area = mean(from, from + HALVES);
		spread = noise(from);
		return FoldedNoise.powerRatio(area, spread);
	}

	/** The mean size of these halves' areas; their number must be a multiple of four. */
	private double mean(int from, int to) {
		float a = 0;
		float b = 0;
		float c = 0;
		float d = 0;
		for (int i = from; i < to; i += 4) {
			a += Math.abs(halves[i]);
			b += Math.abs(halves[i + 1]);
			c += Math.abs(halves[i + 2]);
			d += Math.abs(halves[i + 3]);
		}
		return (a + b + (c + d)) / (to - from);
	}

	/** The variance of the areas, ones and zeros each about their own mean: a half between two transitions is a little smaller than one at a single one. */
	private double noise(int from) {
		float sumOnes = 0;
		float sumZeros = 0;
		float squaresOnes = 0;
		float squaresZeros = 0;
		int ones = 0;
		for (int i = from; i < from + HALVES; i += 2) {
			float first = halves[i];
			float second = halves[i + 1];
			float sum = Math.abs(first) + Math.abs(second);
			float power = first * first + second * second;
			if (first * second < 0) {
				ones++;
				sumOnes += sum;
				squaresOnes += power;
			} else {
				sumZeros += sum;
				squaresZeros += power;
			}
		}
		int zeros = LtcWord.BITS - ones;
		double squares = squaresOnes - (ones == 0 ? 0 : (double) sumOnes * sumOnes / (2 * ones)) + squaresZeros
				- (zeros == 0 ? 0 : (double) sumZeros * sumZeros / (2 * zeros));
		return Math.max(0, squares / HALVES);
	}

	/** Takes the areas of the halves of these cells and of those within reach to either side. */
	private void takeAreas(long cell, int count) {
		double sum = cells.sumAt(cell - REACH);
		places[0] = cells.boundaryOf(cell - REACH);
		running[0] = sum;
		for (int i = 0; i < count + 2 * REACH; i++) {
			long at = cell - REACH + i;
			double middle = cells.middleSumOf(at);
			double end = cells.sumAt(at + 1);
			areas[2 * i] = (float) (middle - sum);
			areas[2 * i + 1] = (float) (end - middle);
			places[i + 1] = cells.boundaryOf(at + 1);
			running[i + 1] = end;
			sum = end;
		}
	}

	/** Brings the running sums back to the areas as they were taken. */
	private void sumAreas(int count) {
		running[0] = 0;
		for (int i = 0; i < count + 2 * REACH; i++) {
			running[i + 1] = running[i] + areas[2 * i] + areas[2 * i + 1];
		}
	}

	/** Takes off what the areas have left once the levels that they stand for are taken from them: offset and hum without the data bits. */
	private void takeBaselineOff(int count) {
		float size = (float) mean(0, 2 * count);
		double sum = 0;
		running[0] = 0;
		for (int i = 0; i < count + 2 * REACH; i++) {
			int near = Math.max(0, Math.min(count - 1, i - REACH));
			float mean = baseline[near] * (float) (places[i + 1] - places[i]) / 2;
			float first = areas[2 * i];
			float second = areas[2 * i + 1];
			// Without a branch: which way it would go is as good as random.
			sum += first - Math.copySign(size, first - mean) + (second - Math.copySign(size, second - mean));
			running[i + 1] = sum;
		}
		takeOff(count);
	}

	/** Takes the mean of what runs around each cell off its halves: on the areas as they are, a first estimate that the data bits disturb. */
	private void takeOff(int count) {
		for (int i = 0; i < count; i++) {
			float mean = (float) ((running[i + 2 * REACH + 1] - running[i]) / (places[i + 2 * REACH + 1] - places[i]));
			float half = mean * (float) (places[i + REACH + 1] - places[i + REACH]) / 2;
			baseline[i] = mean;
			halves[2 * i] = areas[2 * (i + REACH)] - half;
			halves[2 * i + 1] = areas[2 * (i + REACH) + 1] - half;
		}
	}

	private float correlation(int from) {
		float sum = 0;
		for (int i = 0; i < SYNC_HALVES; i++) {
			sum += halves[from + i] * FORWARD[i];
		}
		return sum;
	}

	/** @param before how strongly the sync word before says that it began from the upper level; {@code behind} likewise */
	private float[] weigh(int from, float before, float behind, float scale) {
		// Three zeros in a sync word: it ends on the other level than it began from.
		pathsPlus[0] = -before;
		pathsMinus[0] = before;
		for (int bit = 0; bit < LtcWord.DATA_BITS; bit++) {
			float first = halves[from + 2 * bit];
			float second = halves[from + 2 * bit + 1];
			float plus = pathsPlus[bit];
			float minus = pathsMinus[bit];
			pathsPlus[bit + 1] = Math.max(minus + first + second, plus - first + second);
			pathsMinus[bit + 1] = Math.max(plus - first - second, minus + first - second);
		}
		float[] ones = new float[LtcWord.DATA_BITS];
		float plus = behind;
		float minus = -behind;
		for (int bit = LtcWord.DATA_BITS - 1; bit >= 0; bit--) {
			float first = halves[from + 2 * bit];
			float second = halves[from + 2 * bit + 1];
			float one = Math.max(pathsPlus[bit] - first + second + plus, pathsMinus[bit] + first - second + minus);
			float zero = Math.max(pathsMinus[bit] + first + second + plus, pathsPlus[bit] - first - second + minus);
			ones[bit] = (one - zero) * scale;
			float nextPlus = Math.max(minus - first - second, plus - first + second);
			minus = Math.max(plus + first + second, minus + first - second);
			plus = nextPlus;
		}
		return ones;
	}

	/** Zeros are flat between their quarters: their mean there is the level, whatever the edges look like. */
	private double height(long cell, int lead) {
		double sum = 0;
		int count = 0;
		for (int i = 0; i < LtcWord.BITS; i++) {
			int at = i + lead;
			if (halves[2 * at] * halves[2 * at + 1] > 0) {
				double flat = (places[at + REACH + 1] - places[at + REACH]) / 2;
				sum += Math.abs(cells.coreOf(cell + i) / flat - baseline[at]);
				count++;
			}
		}
		return count == 0 ? 0 : sum / count;
	}

	/** How far the transitions lie from their expected places, as root mean square. */
	private double jitterUs(long cell, int lead) {
		double squares = 0;
		double steps = 0;
		for (int i = 0; i < LtcWord.BITS; i++) {
			int at = i + lead;
			double skew = cells.skewOf(cell + i) - baseline[at] * (places[at + REACH + 1] - places[at + REACH]) / 2;
			squares += skew * skew;
			steps += Math.abs(cells.stepOf(cell + i));
		}
		double quarter = (places[lead + REACH + LtcWord.BITS] - places[lead + REACH]) / LtcWord.BITS / 4;
		return steps == 0 ? 0 : Math.sqrt(squares * LtcWord.BITS) / steps * quarter * microsPerSample;
	}

	private static void reverse(float[] values, int count) {
		for (int i = 0, j = count - 1; i < j; i++, j--) {
			float value = values[i];
			values[i] = values[j];
			values[j] = value;
		}
	}

	/** The levels of the sync word's half cells when it begins from the upper level. */
	private static float[] levels(int bits, boolean backwards) {
		float[] levels = new float[SYNC_HALVES];
		float level = 1;
		for (int bit = 0; bit < SYNC_CELLS; bit++) {
			levels[2 * bit] = -level;
			if ((bits >>> bit & 1) == 0) {
				level = -level;
			}
			levels[2 * bit + 1] = level;
		}
		if (backwards) {
			reverse(levels, SYNC_HALVES);
		}
		return levels;
	}
}
