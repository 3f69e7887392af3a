package org.girandole.timecode.reader;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.List;
import java.util.function.Consumer;

import org.girandole.timecode.ltc.LtcWord;

/**
 * Gives each word its label. Labels count on, and this is used: a word whose bits are half drowned is given the label that must come here, if
 * what is left of its bits allows it. A word that strongly says something else is held back until the words behind it have taken its
 * side, or not: a true jump of the timecode is followed, a torn word is called doubtful. No label is good by counting alone, and none before its row
 * of labels is proven: every single bit of the label must have been supported, by one clear word or by several drowned ones.
 */
final class LabelTracker {
	/** Logarithm of the odds that a label is followed by the next one rather than by any other. */
	private static final double CONTINUITY = 14;
	/** What the recording may say against a label that must come here, in natural logarithms of odds. */
	private static final double MOST_AGAINST = 9;
	/** Where the count is not known yet, what speaks against a label that the speed does not suggest; and by how much the best must lead. */
	private static final double UNLIKELY = 6;
	private static final double MARGIN = 7;
	/** A word that stands alone must be this sure of all its label bits. */
	private static final double SURE = -1e-6;
	private static final double SURE_SYNC = 0.9;
	/** What follows the last frame of a second is learnt only from words that are clear themselves. */
	private static final double SURE_TO_LEARN = 10;
	private static final int MOST_WAITING = 3;
	private static final int MOST_MISSED = 3;
	private static final int MOST_UNPROVEN = 25;

	private final Consumer<LtcFrame> out;
	private final double sampleRate;
	private final Counting counting = new Counting();
	private final Support support = new Support();
	private final List<SoftWord> waiting = new ArrayList<>();
	private final Deque<LtcFrame> unproven = new ArrayDeque<>();
	private LtcWord last;
	private SoftWord lastWord;
	private boolean dropDue;

	LabelTracker(int sampleRate, Consumer<LtcFrame> out) {
		this.sampleRate = sampleRate;
		this.out = out;
	}

	/** Takes the next word of the recording. */
	void word(SoftWord word) {
		SoftWord before = waiting.isEmpty() ? lastWord : waiting.get(waiting.size() - 1);
		if (before != null && (before.reverse() != word.reverse() || stepsBetween(before, word) > MOST_MISSED)) {
			settle();
		}
		if (last == null && waiting.isEmpty()) {
			counting.restart(sampleRate / (word.end() - word.begin()));
		}
		waiting.add(word);
		if (last != null) {
			follow();
		} else {
			begin();
		}
	}

	/** Settles what is still held back. */
	void finish() {
		settle();
	}

	/** Tries to hang the words that wait on to the last good one. */
	private void follow() {
		int count = waiting.size();
		SoftWord newest = waiting.get(count - 1);
		Fit fit = fit(last, lastWord, newest);
		if (fit.against <= MOST_AGAINST) {
			// The words in between fitted nothing; by counting their place in the row is known, but not by what they say.
			for (SoftWord torn : waiting.subList(0, count - 1)) {
				emitAlone(torn);
			}
			accept(newest, fit);
			waiting.clear();
			return;
		}
		if (!support.proven()) {
			// A row of labels that was never proven is given up at the first contradiction.
			settleUnproven();
			last = null;
		}
		if (!begin() && waiting.size() >= MOST_WAITING) {
			emitAlone(waiting.remove(0));
		}
	}

	/** Looks for a label from which all words that wait count on; true if there is one. */
	private boolean begin() {
		int count = waiting.size();
		if (count < 2) {
			return false;
		}
		LtcWord best = null;
		double least = MOST_AGAINST;
		for (SoftWord word : waiting) {
			LtcWord first = backTo(waiting.get(0), word);
			double against = first == null ? Double.MAX_VALUE : againstAll(first);
			if (against < least) {
				least = against;
				best = first;
			}
		}
		if (best == null) {
			if (last == null && count >= MOST_WAITING) {
				emitAlone(waiting.remove(0));
			}
			return false;
		}
		settleUnproven();
		support.restart();
		double drop = 0;
		for (SoftWord word : waiting) {
			drop += word.ones()[Long.numberOfTrailingZeros(LtcWord.DROP_MASK)];
		}
		dropDue = drop > 0;
		SoftWord first = waiting.get(0);
		accept(first, new Fit(best.data() & LtcWord.LABEL_MASK, first.against(best.data(), LtcWord.LABEL_MASK), true));
		for (SoftWord word : waiting.subList(1, count)) {
			accept(word, fit(last, lastWord, word));
		}
		waiting.clear();
		return true;
	}

	/** The label that the first waiting word must have if a later one is read right; null if that one is no time. */
	private LtcWord backTo(SoftWord first, SoftWord word) {
		LtcWord label = new LtcWord(word.data());
		if (!label.isTime()) {
			return null;
		}
		for (int steps = stepsBetween(first, word); steps > 0 && first != word; steps--) {
			label = withLabel(label.data(), counting.next(label, !word.reverse())[0]);
		}
		return label;
	}

	private double againstAll(LtcWord first) {
		LtcWord label = first;
		SoftWord previous = waiting.get(0);
		double against = previous.against(first.data(), LtcWord.LABEL_MASK);
		for (SoftWord word : waiting.subList(1, waiting.size())) {
			Fit fit = fit(label, previous, word);
			against += fit.against;
			label = withLabel(word.data(), fit.label);
			previous = word;
		}
		return against;
	}

	/** The best label of a word that comes some frames after another, and what the word says against it. */
	private Fit fit(LtcWord from, SoftWord fromWord, SoftWord word) {
		LtcWord label = from;
		for (int steps = stepsBetween(fromWord, word); steps > 1; steps--) {
			label = withLabel(label.data(), counting.next(label, word.reverse())[0]);
		}
		long best = -1;
		double leastAgainst = Double.MAX_VALUE;
		double least = Double.MAX_VALUE;
		double second = Double.MAX_VALUE;
		double unlikely = 0;
		for (long candidate : counting.next(label, word.reverse())) {
			if (candidate == best) {
				continue;
			}
			double against = word.against(candidate, LtcWord.LABEL_MASK);
			if (against + unlikely < least) {
				second = least;
				least = against + unlikely;
				leastAgainst = against;
				best = candidate;
			} else {
				second = Math.min(second, against + unlikely);
			}
			unlikely = UNLIKELY;
		}
		return new Fit(best, leastAgainst, second - least > MARGIN);
	}

	/** A label, what the word says against it, and whether no other label that may stand here comes near. */
	private record Fit(long label, double against, boolean clear) {
	}

	private void accept(SoftWord word, Fit fit) {
		LtcWord label = withDropFlag(withLabel(word.data(), fit.label), word);
		if (last != null && stepsBetween(lastWord, word) == 1 && word.weakest(LtcWord.LABEL_MASK) > SURE_TO_LEARN) {
			counting.learn(last, label, word.reverse());
		}
		support.add(word, label.data());
		double confidence = fit.clear ? 1 / (1 + Math.exp(fit.against - CONTINUITY)) : 0.5;
		Quality quality = fit.against > MOST_AGAINST || !fit.clear ? Quality.DOUBTFUL : fit.against > 0 ? Quality.MENDED : Quality.READ;
		unproven.add(frame(word, label, quality, confidence));
		last = label;
		lastWord = word;
		if (support.proven()) {
			unproven.forEach(out);
			unproven.clear();
		} else if (unproven.size() > MOST_UNPROVEN) {
			out.accept(unproven.remove().doubted());
		}
	}

	/** A word that nothing around it supports is good only if it is quite sure of itself. */
	private void emitAlone(SoftWord word) {
		settleUnproven();
		LtcWord label = new LtcWord(word.data());
		double certainty = word.certainty(LtcWord.LABEL_MASK);
		boolean sure = label.isTime() && certainty > SURE && word.sync() > SURE_SYNC;
		out.accept(frame(word, label, sure ? Quality.READ : Quality.DOUBTFUL, sure ? Math.exp(certainty) : Math.min(0.5, Math.exp(certainty))));
	}

	private void settle() {
		settleUnproven();
		for (SoftWord word : waiting) {
			emitAlone(word);
		}
		waiting.clear();
		last = null;
		support.restart();
	}

	private void settleUnproven() {
		unproven.forEach(frame -> out.accept(frame.doubted()));
		unproven.clear();
	}

	/** How many frames on the second word is; 1 if it directly follows. */
	private static int stepsBetween(SoftWord first, SoftWord second) {
		double length = (first.end() - first.begin() + second.end() - second.begin()) / 2;
		return (int) Math.max(1, Math.min(1_000_000, Math.round((second.begin() - first.begin()) / length)));
	}

	/** A drowned drop-frame flag is taken from the words around. */
	private LtcWord withDropFlag(LtcWord label, SoftWord word) {
		if (word.weakest(LtcWord.DROP_MASK) >= MOST_AGAINST) {
			dropDue = label.dropFrame();
			return label;
		}
		return new LtcWord(label.data() & ~LtcWord.DROP_MASK | (dropDue ? LtcWord.DROP_MASK : 0));
	}

	private static LtcWord withLabel(long data, long label) {
		return new LtcWord(data & ~LtcWord.LABEL_MASK | label);
	}

	private static LtcFrame frame(SoftWord word, LtcWord label, Quality quality, double confidence) {
		return new LtcFrame(word.begin(), word.end(), label, quality, confidence, word.reverse(), 20 * Math.log10(Math.max(1e-9, word.height())),
				10 * Math.log10(Math.max(1e-9, word.signalToNoise())), word.jitterUs());
	}
}
