package org.girandole.timecode.reader;

/**
 * Follows the bit cells of a bi-phase mark signal. Every cell begins with a transition; where it lies is measured by the area under the signal a
 * quarter cell to either side, not by a single crossing, so that noise averages out. A loop of second order follows place and length of the
 * cells; its band is wide enough for the wow and flutter of a bad machine and narrow enough to glide over noise.
 *
 * <p>Each cell leaves its two halves as areas. Around each place the mean of the surrounding cells is taken off, which removes an offset and
 * most of mains hum.
 */
final class CellTracker {
	/** Cells that are remembered: three words and some. */
	static final int MEMORY = 512;
	private static final int MASK = MEMORY - 1;
	/** Cells to either side over which the baseline is taken. */
	static final int BASELINE_CELLS = 3;
	private static final double PHASE_GAIN = 0.14;
	private static final double LENGTH_GAIN = PHASE_GAIN * PHASE_GAIN / 3;
	private static final double FAST_PHASE_GAIN = 0.25;
	private static final double FAST_LENGTH_GAIN = FAST_PHASE_GAIN * FAST_PHASE_GAIN / 3;
	private static final int FAST_CELLS = 60;
	private static final double LONGEST_STEP = 0.2;

	private final SampleWindow window;
	private final double shortest;
	private final double longest;

	private final double[] boundary = new double[MEMORY];
	private final double[] boundarySum = new double[MEMORY];
	private final double[] middleSum = new double[MEMORY];
	private final float[] skew = new float[MEMORY];
	private final float[] step = new float[MEMORY];
	private final float[] core = new float[MEMORY];
	private long cells;
	private long transitions;

	private double begin;
	private double beginSum;
	private double lastQuarterSum;
	private double length;
	private double strength;

	/**
	 * @param begin  where a cell begins
	 * @param length the length of a cell in samples
	 */
	CellTracker(SampleWindow window, double begin, double length, double strength, double shortest, double longest) {
		this.window = window;
		this.begin = begin;
		this.beginSum = window.integral(begin);
		this.lastQuarterSum = window.integral(begin - length / 4);
		this.length = length;
		this.strength = strength;
		this.shortest = shortest;
		this.longest = longest;
	}

	/** The number of cells followed so far. */
	long cells() {
		return cells;
	}

	/** Where the next cell begins. */
	double begin() {
		return begin;
	}

	double length() {
		return length;
	}

	/** The mean height of the signal that timing errors are measured against. */
	void setStrength(double height) {
		strength = height;
	}

	double strength() {
		return strength;
	}

	/** True if the recording that is held reaches far enough for the next cell. */
	boolean canAdvance() {
		return window.holds(begin + (BASELINE_CELLS + 1) * length);
	}

	/** Follows one cell. */
	void advance() {
		double quarter = length / 4;
		double firstQuarterSum = window.integral(begin + quarter);
		double before = beginSum - lastQuarterSum;
		double after = firstQuarterSum - beginSum;
		double offset = baselineAhead() * 2 * quarter;
		double skewed = before + after - offset;
		transitions = transitions << 1 | (Math.abs(after - before) > Math.abs(skewed) ? 1 : 0);
		double error = after < before ? skewed : -skewed;
		error = strength > 0 ? error / (2 * strength) : 0;
		double limit = length * LONGEST_STEP;
		error = Math.max(-limit, Math.min(limit, error));
		boolean fast = cells < FAST_CELLS;
		double end = begin + length + (fast ? FAST_PHASE_GAIN : PHASE_GAIN) * error;
		int slot = (int) cells & MASK;
		boundary[slot] = begin;
		boundarySum[slot] = beginSum;
		skew[slot] = (float) (before + after);
		step[slot] = (float) (after - before);
		double half = (end - begin) / 2;
		middleSum[slot] = window.integral(begin + half);
		lastQuarterSum = window.integral(begin + half * 1.5);
		core[slot] = (float) (lastQuarterSum - firstQuarterSum);
		beginSum = window.integral(end);
		begin = end;
		length = Math.max(shortest, Math.min(longest, length + (fast ? FAST_LENGTH_GAIN : LENGTH_GAIN) * error));
		cells++;
	}

	/** The mean of the signal around the coming boundary. */
	private double baselineAhead() {
		double reach = BASELINE_CELLS * length;
		double back = cells >= BASELINE_CELLS ? boundarySum[(int) (cells - BASELINE_CELLS) & MASK] : beginSum;
		double from = cells >= BASELINE_CELLS ? boundary[(int) (cells - BASELINE_CELLS) & MASK] : begin;
		return (window.integral(begin + reach) - back) / (begin + reach - from);
	}

	/** In how many of the last cells the signal changed sides at the cell's beginning, as in bi-phase mark it always does; for up to 64 cells. */
	int transitionsInLast(int count) {
		return Long.bitCount(transitions << 64 - count);
	}

	double boundaryOf(long cell) {
		return cell == cells ? begin : boundary[(int) cell & MASK];
	}

	double sumAt(long cell) {
		return cell == cells ? beginSum : boundarySum[(int) cell & MASK];
	}

	double middleSumOf(long cell) {
		return middleSum[(int) cell & MASK];
	}

	/** The area between the end of the cell's first quarter and the beginning of its last: where a zero is flat. */
	float coreOf(long cell) {
		return core[(int) cell & MASK];
	}

	/** The area a quarter cell to either side of the transition that opened the cell; 0 where it lies in its expected place. */
	float skewOf(long cell) {
		return skew[(int) cell & MASK];
	}

	/** The area of the quarter cell behind that transition less the one before it. */
	float stepOf(long cell) {
		return step[(int) cell & MASK];
	}
}
