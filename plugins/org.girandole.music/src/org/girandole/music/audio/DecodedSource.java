package org.girandole.music.audio;

import java.io.IOException;
import java.io.InputStream;
import java.util.ArrayList;
import java.util.List;

/**
 * A compressed file: a library decodes block after block, this class hands them out in the sizes that are asked for,
 * leaves out what an encoder added at both ends, and turns every failure of the library into an {@link AudioException}.
 */
abstract class DecodedSource implements AudioSource {
    private final InputStream in;
    private final List<String> remarks = new ArrayList<>();
    private float[][] block = new float[0][];
    private int blockAt;
    private int blockEnd;
    private long skip;
    private long handedOut;
    private long endAt = Long.MAX_VALUE;
    private boolean ended;

    DecodedSource(InputStream in) {
        this.in = in;
    }

    /**
     * Decodes some more and hands it over by {@link #deliver}; may deliver nothing and be called again.
     *
     * @return false at the end of the file
     */
    abstract boolean decodeMore() throws IOException;

    /** Sentences that are known at the end only. */
    void atEnd() {
    }

    final void deliver(float[][] samples, int frames) {
        block = samples;
        blockAt = 0;
        blockEnd = frames;
    }

    /** Leaves out so many frames from here. */
    final void leaveOut(long frames) {
        skip = frames;
    }

    /** Hands out at most so many frames in all. */
    final void endAt(long frames) {
        endAt = frames;
    }

    final long handedOut() {
        return handedOut;
    }

    final void remark(String sentence) {
        if (!remarks.contains(sentence)) {
            remarks.add(sentence);
        }
    }

    @Override
    public final int read(float[][] into, int offset, int most) throws IOException {
        while (blockAt >= blockEnd) {
            if (ended || !moreByLibrary()) {
                if (!ended) {
                    ended = true;
                    atEnd();
                }
                return -1;
            }
            int left = (int) Math.min(skip, blockEnd - blockAt);
            blockAt += left;
            skip -= left;
            blockEnd = (int) Math.min(blockEnd, blockAt + Math.max(0, endAt - handedOut));
        }
        int n = Math.min(most, blockEnd - blockAt);
        for (int c = 0; c < channels(); c++) {
            System.arraycopy(block[c], blockAt, into[c], offset, n);
        }
        blockAt += n;
        handedOut += n;
        return n;
    }

    private boolean moreByLibrary() throws IOException {
        try {
            return decodeMore();
        } catch (AudioException e) {
            throw e;
        } catch (RuntimeException e) {
            // The decoding libraries index their tables with what they read: on damaged bytes any of these may come.
            throw new AudioException(AudioException.Kind.DAMAGED, "The file (" + format() + ") is damaged after "
                    + seconds(handedOut) + " s of sound", e);
        }
    }

    private String seconds(long frames) {
        return String.format(java.util.Locale.ROOT, "%.3f", (double) frames / sampleRate());
    }

    @Override
    public final List<String> remarks() {
        return List.copyOf(remarks);
    }

    @Override
    public final void close() throws IOException {
        in.close();
    }
}
