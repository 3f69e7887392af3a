package org.girandole.timecode.reader;

import java.util.Comparator;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;

import org.girandole.timecode.ltc.LtcWord;
import org.girandole.timecode.ltc.ReleaseMark;
import org.girandole.timecode.ltc.UserBits;

/** Counts what the user bits of many words say, so that a few torn ones do no harm. */
final class UserBitsCounter {
	/** Of all other user bits only so many different ones are counted. */
	private static final int MOST_OTHERS = 1000;
	/** A page must come more than once, or in most words: chance gives a page in one word of 128. */
	private static final int LEAST_PAGES = 2;

	private final Map<Integer, Integer> firsts = new TreeMap<>();
	private final Map<Integer, Integer> seconds = new TreeMap<>();
	private final Map<Integer, Integer> others = new TreeMap<>();
	private int empty;
	private int pages;

	void add(LtcWord word) {
		int bits = word.userBits();
		Optional<UserBits.Page> page = UserBits.page(bits);
		if (page.isPresent()) {
			pages++;
			(page.get().first() ? firsts : seconds).merge(bits, 1, Integer::sum);
		} else if (bits == 0) {
			empty++;
		} else if (others.size() < MOST_OTHERS || others.containsKey(bits)) {
			others.merge(bits, 1, Integer::sum);
		}
	}

	UserBitsFound result() {
		Optional<Map.Entry<Integer, Integer>> first = most(firsts);
		Optional<ReleaseMark> mark = Optional.empty();
		int marked = 0;
		if (first.isPresent() && first.get().getValue() >= LEAST_PAGES) {
			UserBits.Page one = UserBits.page(first.get().getKey()).orElseThrow();
			Map<Integer, Integer> sameSlot = new TreeMap<>(seconds);
			sameSlot.keySet().removeIf(bits -> UserBits.page(bits).orElseThrow().slot() != one.slot());
			Optional<Map.Entry<Integer, Integer>> second = most(sameSlot);
			if (second.isPresent() && second.get().getValue() >= LEAST_PAGES) {
				mark = Optional.of(new ReleaseMark(one.slot(), one.digits() + UserBits.page(second.get().getKey()).orElseThrow().digits()));
				marked = first.get().getValue() + second.get().getValue();
			}
		}
		return new UserBitsFound(mark, marked, pages - marked, empty, most(others).map(entry -> UserBits.hex(entry.getKey())).orElse(""));
	}

	private static Optional<Map.Entry<Integer, Integer>> most(Map<Integer, Integer> counts) {
		return counts.entrySet().stream().max(Comparator.comparingInt((Map.Entry<Integer, Integer> entry) -> entry.getValue()));
	}
}
