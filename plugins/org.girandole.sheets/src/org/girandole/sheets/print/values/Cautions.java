package org.girandole.sheets.print.values;

import java.util.List;

/** The cautions that open every document. They are the same everywhere, so that a person learns them once. */
public final class Cautions {
	/** What comes before everything printed. */
	public static final String FIRST = "Local law, the authority having jurisdiction, the maker's data and the judgement of a licensed"
			+ " pyrotechnician come first, before anything printed here.";
	/** What holds for every sheet. */
	public static final List<String> ALWAYS = List.of(
			"A computed distance is a floor to start from. It is not permission.",
			"Nobody approaches a loaded tube, a connected module or anything that has been fired until the person in charge has said so."
					+ " Treat every tube as loaded and every lead as live.",
			"A value marked " + Quantities.ESTIMATED + " is estimated: neither measured nor stated by the maker. “" + Quantities.NOT_STATED
					+ "” and words in capitals such as NO TUBE mean that data is missing: stop and ask.");

	private Cautions() {
	}
}
