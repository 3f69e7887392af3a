package org.girandole.timecode.reader;

/** How far the label of a frame can be trusted. */
public enum Quality {
	/** Every bit of the label was read as it stands. */
	READ,
	/** Some bits were drowned, but what is left of them fits the label that must come here by the frames before and behind. */
	MENDED,
	/** A word was there, but its label could not be made out, or fits nothing around it. */
	DOUBTFUL;

	public boolean isGood() {
		return this != DOUBTFUL;
	}
}
