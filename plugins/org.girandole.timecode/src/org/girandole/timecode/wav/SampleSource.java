package org.girandole.timecode.wav;

import java.io.Closeable;
import java.io.IOException;

/** Audio that is read once, from its beginning to its end. Samples lie between -1 and 1; floating-point files may exceed that. */
public interface SampleSource extends Closeable {

	/** Samples a second in each channel. */
	int sampleRate();

	int channels();

	/** How many sample frames there are, or -1 if that is not known before the end. */
	long frames();

	/**
	 * Reads up to {@code frames} sample frames, the channels interleaved, beginning at {@code offset} of the array.
	 *
	 * @return how many were read, at least one; -1 at the end
	 */
	int read(float[] interleaved, int offset, int frames) throws IOException;
}
