package org.girandole.timecode.reader;

import org.girandole.timecode.ltc.LtcWord;

/**
 * How labels count on. The bit rate alone does not tell 24 frames played fast from 25, so that the count is learnt from the labels: what follows
 * frame 23 or 24 settles it. Until then, and where drop-frame flag and counting might disagree, several labels can be the next one.
 */
final class Counting {
	private static final int[] NOMINALS = { 24, 25, 30 };

	private int nominal;
	private int guess = 30;

	/** Frames counted in a second as far as the labels have shown it; 0 before that. */
	int nominal() {
		return nominal;
	}

	/** Starts anew; the frame rate as measured serves as a guess until the labels tell. */
	void restart(double framesPerSecond) {
		nominal = 0;
		double nearest = Double.MAX_VALUE;
		for (int each : NOMINALS) {
			double distance = Math.abs(Math.log(framesPerSecond / each));
			if (distance < nearest) {
				nearest = distance;
				guess = each;
			}
		}
	}

	private int assumed() {
		return nominal == 0 ? guess : nominal;
	}

	/** The labels that may stand in the next word, the likeliest first. */
	long[] next(LtcWord word, boolean reverse) {
		return reverse ? before(word) : after(word);
	}

	private long[] after(LtcWord word) {
		int frames = word.frames();
		long on = frames + 1 < 30 ? LtcWord.labelBits(word.hours(), word.minutes(), word.seconds(), frames + 1) : -1;
		if (nominal != 0 ? frames + 1 != nominal : !mayBeLast(frames)) {
			return new long[] { on };
		}
		int second = (secondOfDay(word) + 1) % 86_400;
		long plain = bits(second, 0);
		boolean minute = second % 60 == 0 && second / 60 % 10 != 0 && frames == 29;
		long[] over = minute ? word.dropFrame() ? new long[] { bits(second, 2), plain } : new long[] { plain, bits(second, 2) } : new long[] { plain };
		if (nominal != 0 || on < 0) {
			return over;
		}
		return frames + 1 == guess ? new long[] { plain, on } : new long[] { on, plain };
	}

	private long[] before(LtcWord word) {
		int frames = word.frames();
		boolean dropMinute = word.dropFrame() && word.seconds() == 0 && word.minutes() % 10 != 0 && frames == 2;
		if (frames > 0 && !dropMinute) {
			return new long[] { LtcWord.labelBits(word.hours(), word.minutes(), word.seconds(), frames - 1) };
		}
		int second = Math.floorMod(secondOfDay(word) - 1, 86_400);
		if (nominal != 0) {
			return new long[] { bits(second, nominal - 1) };
		}
		return new long[] { bits(second, guess - 1), bits(second, 29), bits(second, 24), bits(second, 23) };
	}

	/** Learns from a label that is certain and the one before it. */
	void learn(LtcWord previous, LtcWord word, boolean reverse) {
		LtcWord first = reverse ? word : previous;
		LtcWord second = reverse ? previous : word;
		if (second.frames() == first.frames() + 1 && nominal != 0 && second.frames() >= nominal) {
			nominal = 0;
			guess = second.frames() >= 25 ? 30 : 25;
		} else if (second.frames() < first.frames() && secondOfDay(second) == (secondOfDay(first) + 1) % 86_400 && mayBeLast(first.frames())) {
			nominal = first.frames() + 1;
		}
	}

	/** How many frames lie from one label to another, going forwards, by what is known or guessed; within half a day either way. */
	int distance(LtcWord from, LtcWord to) {
		int day = frameNumber(new int[] { 24, 0, 0, 0 }, to.dropFrame());
		int distance = Math.floorMod(frameNumber(to) - frameNumber(from), day);
		return distance > day / 2 ? distance - day : distance;
	}

	private int frameNumber(LtcWord word) {
		return frameNumber(new int[] { word.hours(), word.minutes(), word.seconds(), word.frames() }, word.dropFrame());
	}

	private int frameNumber(int[] label, boolean drop) {
		int minutes = 60 * label[0] + label[1];
		int number = assumed() * (60 * minutes + label[2]) + label[3];
		return drop && assumed() == 30 ? number - 2 * (minutes - minutes / 10) : number;
	}

	private static boolean mayBeLast(int frames) {
		return frames == 23 || frames == 24 || frames == 29;
	}

	private static int secondOfDay(LtcWord word) {
		return (word.hours() * 60 + word.minutes()) * 60 + word.seconds();
	}

	private static long bits(int second, int frames) {
		return LtcWord.labelBits(second / 3600, second / 60 % 60, second % 60, frames);
	}
}
