package org.girandole.timecode.reader;

import java.util.ArrayList;
import java.util.List;
import java.util.function.Consumer;

/**
 * Finds the words in one channel of a recording. While nothing is known it searches for the bit clock, stretch by stretch; a clock counts once
 * two sync words lie exactly one word apart. From there the cells are followed forwards, and once also backwards, to the words that came by
 * before the clock was known. Two words without a sync word end the following, and the search begins again behind the last good word.
 */
final class WordDecoder {
	private static final int WORD = 80;
	private static final int TRIAL_CELLS = 300;
	private static final int LEAST_TRANSITIONS = 10;
	private static final double SURE_SYNC = 0.8;
	private static final double PASSING_SYNC = 0.6;
	private static final int MOST_MISSES = 2;
	private static final double HEIGHT_SHARE = 0.3;
	private static final double LOOK_BACK_SECONDS = 0.4;
	private static final int WARM_UP_CELLS = 20;
	private static final double LEAST_HEIGHT = 1e-6;

	private final int sampleRate;
	private final SampleWindow window;
	private final ClockSearch search;
	private final Consumer<SoftWord> out;
	private final double shortest;
	private final double longest;
	private final int hop;
	private final int lookAhead;
	private final int lookBack;
	private final int rest;

	private long cursor;
	private double wordsEnd = Double.NEGATIVE_INFINITY;

	private CellTracker cells;
	private WordReader words;
	private boolean reverse;
	private long next;
	private int misses;

	/** @param out receives every word in the order of the recording */
	WordDecoder(int sampleRate, Consumer<SoftWord> out) {
		this.sampleRate = sampleRate;
		this.search = new ClockSearch(sampleRate);
		this.shortest = sampleRate / ClockSearch.MOST_BITS_PER_SECOND;
		this.longest = sampleRate / ClockSearch.LEAST_BITS_PER_SECOND;
		this.hop = search.samples() / 2;
		this.lookAhead = (int) Math.max(search.samples(), (TRIAL_CELLS + 8) * longest);
		this.lookBack = (int) (LOOK_BACK_SECONDS * sampleRate);
		this.rest = (int) (longest * (CellTracker.BASELINE_CELLS + 3));
		// The first word's surroundings reach a little before the recording's beginning.
		this.window = new SampleWindow(2 * (lookAhead + lookBack) + sampleRate / 4, -rest);
		this.window.append(new float[rest], 0, rest, 1);
		this.out = out;
		this.cursor = -rest;
	}

	/** Takes in samples, {@code stride} places apart in the array. */
	void write(float[] samples, int offset, int count, int stride) {
		int done = 0;
		while (done < count) {
			int part = Math.min(count - done, window.room());
			window.append(samples, offset + done * stride, part, stride);
			done += part;
			if (window.room() == 0) {
				work(false);
			}
		}
	}

	/** Reads what is left. */
	void finish() {
		// So do the last word's beyond its end; and the search looks at more samples at once than a short recording has.
		int silence = rest + search.samples();
		write(new float[silence], 0, silence, 1);
		work(true);
	}

	private void work(boolean last) {
		boolean busy = true;
		while (busy) {
			busy = cells != null ? follow() : seek(last);
		}
		window.forgetBefore((long) Math.max(wordsEnd, cursor) - lookBack);
	}

	/** Follows the cells as far as the samples go; false if more are needed. */
	private boolean follow() {
		while (cells.canAdvance()) {
			cells.advance();
			if (cells.cells() == next + WORD + CellTracker.BASELINE_CELLS) {
				word();
				if (cells == null) {
					return true;
				}
			}
		}
		return false;
	}

	private void word() {
		SoftWord word = words.read(next, reverse, next);
		boolean good = passes(word, cells.strength());
		misses = good ? 0 : misses + 1;
		if (good) {
			cells.setStrength(0.7 * cells.strength() + 0.3 * word.height());
			wordsEnd = word.end();
			out.accept(word);
		}
		if (misses >= MOST_MISSES) {
			cursor = Math.max((long) wordsEnd, cursor + hop);
			cells = null;
			return;
		}
		next += WORD;
	}

	private boolean passes(SoftWord word, double strength) {
		return word.sync() > PASSING_SYNC && word.height() > HEIGHT_SHARE * strength && word.height() > LEAST_HEIGHT;
	}

	/** Looks for a clock from the cursor on; false if more samples are needed. */
	private boolean seek(boolean last) {
		cursor = Math.max(cursor, window.first());
		if (window.end() - cursor < (last ? search.samples() : lookAhead)) {
			return false;
		}
		for (ClockSearch.Clock clock : search.search(window, cursor)) {
			if (clock.length() > shortest && clock.length() < longest && tryClock(clock)) {
				return true;
			}
		}
		cursor += hop;
		return true;
	}

	private boolean tryClock(ClockSearch.Clock clock) {
		double from = cursor + clock.length();
		double begin = clock.begin() + Math.ceil((from - clock.begin()) / clock.length()) * clock.length();
		CellTracker trial = new CellTracker(window, begin, clock.length(), 0, shortest, longest);
		WordReader reader = new WordReader(trial, sampleRate);
		double strength = 0;
		double[] syncs = new double[TRIAL_CELLS];
		int margin = CellTracker.BASELINE_CELLS;
		for (int i = 0; i < TRIAL_CELLS && trial.canAdvance(); i++) {
			trial.advance();
			// The step at a transition tells the height whatever the offset.
			double height = Math.abs(trial.stepOf(trial.cells() - 1)) * 2 / trial.length();
			strength += (height - strength) / Math.min(i + 1, 24);
			trial.setStrength(strength);
			int cell = i - WordReader.SYNC_CELLS - margin + 1;
			// Where cells do not begin with transitions there is no sync word, and the look for it can be spared.
			if (cell < margin || trial.transitionsInLast(WordReader.SYNC_CELLS) < LEAST_TRANSITIONS) {
				continue;
			}
			double sync = reader.syncAt(cell);
			syncs[cell] = sync;
			if (Math.abs(sync) > SURE_SYNC && cell >= WORD && Math.abs(syncs[cell - WORD]) > SURE_SYNC && sync * syncs[cell - WORD] > 0) {
				start(trial, reader, cell, sync < 0);
				return true;
			}
		}
		return false;
	}

	/** Begins to follow from a trial whose sync word stands at {@code cell}, and at {@code cell - 80} too. */
	private void start(CellTracker trial, WordReader reader, int cell, boolean backwards) {
		cells = trial;
		words = reader;
		reverse = backwards;
		misses = 0;
		// Forwards a word ends with its sync word, backwards it begins with it.
		int first = backwards ? cell - WORD : cell - WORD + WordReader.SYNC_CELLS;
		lookBack(trial, first);
		next = first;
		if (cells.cells() >= next + WORD + CellTracker.BASELINE_CELLS) {
			word();
		}
	}

	/**
	 * Follows the cells backwards from a word that is known, and hands on the words found there in the order of the recording.
	 *
	 * @param first the cell of the trial where that word begins
	 */
	private void lookBack(CellTracker trial, int first) {
		double from = trial.boundaryOf(first);
		double known = trial.boundaryOf(first + WARM_UP_CELLS);
		long edge = (long) Math.max(window.first(), Math.max(wordsEnd - trial.length(), from - lookBack));
		long top = (long) known + (long) (2 * trial.length());
		// What stands at a place in the recording stands at mirror - place in the reversed stretch.
		double mirror = top - 1.0;
		CellTracker tracker = new CellTracker(window.reversed(edge, top), mirror - known, trial.length(), trial.strength(), shortest, longest);
		WordReader reader = new WordReader(tracker, sampleRate);
		List<SoftWord> found = new ArrayList<>();
		int missed = 0;
		for (long at = WARM_UP_CELLS; missed < MOST_MISSES && tracker.canAdvance();) {
			tracker.advance();
			if (tracker.cells() == at + WORD + CellTracker.BASELINE_CELLS) {
				SoftWord word = reader.read(at, !reverse, at);
				if (passes(word, tracker.strength())) {
					found.add(word.mirrored(mirror));
					missed = 0;
				} else {
					missed++;
				}
				at += WORD;
			}
		}
		for (int i = found.size() - 1; i >= 0; i--) {
			out.accept(found.get(i));
		}
	}
}
