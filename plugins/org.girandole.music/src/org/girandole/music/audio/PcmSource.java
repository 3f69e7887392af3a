package org.girandole.music.audio;

import java.io.IOException;
import java.io.InputStream;
import java.nio.ByteBuffer;
import java.util.ArrayList;
import java.util.List;

/** The samples of an uncompressed file, from a stream that stands at the first of them. */
final class PcmSource implements AudioSource {
    private static final int BLOCK = 4096;

    private final InputStream in;
    private final String format;
    private final int sampleRate;
    private final int channels;
    private final SampleCoding coding;
    private final long frames;
    private final byte[] bytes;
    private final ByteBuffer view;
    private final List<String> remarks = new ArrayList<>();
    private long left;

    /**
     * @param claimedFrames by the header
     * @param heldBytes     from here to the end of the file
     */
    PcmSource(InputStream in, String container, int sampleRate, int channels, SampleCoding coding, long claimedFrames,
            long heldBytes) {
        this.in = in;
        this.format = container + ", " + coding.words();
        this.sampleRate = sampleRate;
        this.channels = channels;
        this.coding = coding;
        int frameBytes = coding.bytes() * channels;
        long held = heldBytes / frameBytes;
        this.frames = Math.min(claimedFrames, held);
        if (claimedFrames > held) {
            remarks.add("The file is cut off: its header promises " + claimedFrames + " samples a channel, it holds " + held);
        }
        this.left = frames;
        this.bytes = new byte[BLOCK * frameBytes];
        this.view = ByteBuffer.wrap(bytes).order(coding.order());
    }

    @Override
    public int read(float[][] into, int offset, int most) throws IOException {
        int wanted = (int) Math.min(Math.min(most, BLOCK), left);
        if (wanted <= 0) {
            return -1;
        }
        int frameBytes = coding.bytes() * channels;
        int got = in.readNBytes(bytes, 0, wanted * frameBytes) / frameBytes;
        if (got < wanted) {
            remarks.add("The file became shorter while it was read");
            left = got;
            if (got == 0) {
                return -1;
            }
        }
        for (int c = 0; c < channels; c++) {
            float[] channel = into[c];
            int at = c * coding.bytes();
            for (int i = 0; i < got; i++, at += frameBytes) {
                float value = coding.read(view, at);
                channel[offset + i] = Float.isFinite(value) ? value : 0f;
            }
        }
        left -= got;
        return got;
    }

    @Override
    public String format() {
        return format;
    }

    @Override
    public int sampleRate() {
        return sampleRate;
    }

    @Override
    public int channels() {
        return channels;
    }

    @Override
    public long frames() {
        return frames;
    }

    @Override
    public List<String> remarks() {
        return List.copyOf(remarks);
    }

    @Override
    public void close() throws IOException {
        in.close();
    }
}
