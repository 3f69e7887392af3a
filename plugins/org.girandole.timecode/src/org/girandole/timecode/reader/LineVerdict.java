package org.girandole.timecode.reader;

import java.util.List;

/**
 * Whether a recorded line is fit for the night, and why.
 *
 * @param reasons what speaks for and against it, the gravest first
 */
public record LineVerdict(Fitness fitness, List<Reason> reasons) {
	public LineVerdict {
		reasons = List.copyOf(reasons);
	}

	/** The verdict in a word. */
	public enum Fitness {
		FIT("Fit for the night"), FIT_AS_SIGNAL("Fit as a signal; whether it is this show's was not checked"), WITH_CARE("Fit with care"), UNFIT("NOT fit for the night");

		private final String words;

		Fitness(String words) {
			this.words = words;
		}

		public String words() {
			return words;
		}
	}

	/** How much a reason weighs; what is unknown speaks neither for nor against. */
	public enum Weight {
		AGAINST, CARE, UNKNOWN, FOR
	}

	/** One reason, in a sentence. */
	public record Reason(Weight weight, String text) {
	}
}
