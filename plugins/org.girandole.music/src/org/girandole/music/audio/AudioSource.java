package org.girandole.music.audio;

import java.io.Closeable;
import java.io.IOException;
import java.util.List;

/**
 * A sound file being read from start to end. Samples are in -1 to 1 (full scale; files of floating-point samples may go
 * beyond). One thread at a time.
 */
public interface AudioSource extends Closeable {

    /** What it is, for a person: {@code WAV, 24-bit PCM}. */
    String format();

    /** Samples a second in each channel; 1000 to 768000. */
    int sampleRate();

    /** 1 to 32. */
    int channels();

    /** Frames (one sample of every channel) in the whole file, or -1 where only reading to the end can tell. */
    long frames();

    /**
     * Reads some frames.
     *
     * @param into   one array a channel
     * @param offset where to begin in each
     * @param most   at most so many frames, at least 1
     * @return frames read, at least 1; -1 at the end
     * @throws AudioException if the bytes make no sense from here on
     */
    int read(float[][] into, int offset, int most) throws IOException;

    /** Sentences on what was wrong but could be lived with, as far as has been read: a cut-off file, damaged frames. */
    List<String> remarks();
}
