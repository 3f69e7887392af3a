package org.girandole.music.analysis;

import java.io.IOException;
import java.util.List;
import org.girandole.music.audio.AudioSource;

/** Takes a sound file block by block; several of them share one decoding. */
interface SampleSink {
    int BLOCK = 8192;

    /** The next frames: one array a channel, valid to {@code count}; only to be read, and only during the call. */
    void take(float[][] channels, int count);

    /** Plays a source to its end into the sinks. @return number of frames */
    static long play(AudioSource source, List<? extends SampleSink> sinks) throws IOException {
        float[][] block = new float[source.channels()][BLOCK];
        long total = 0;
        for (int n = source.read(block, 0, BLOCK); n >= 0; n = source.read(block, 0, BLOCK)) {
            for (SampleSink sink : sinks) {
                sink.take(block, n);
            }
            total += n;
        }
        return total;
    }
}
