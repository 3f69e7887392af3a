package org.girandole.music.audio;

import java.io.EOFException;
import java.io.IOException;
import java.io.InputStream;
import java.nio.ByteBuffer;
import java.util.Arrays;
import org.girandole.music.audio.FlacBits.BadFrame;

/**
 * FLAC by RFC 9639. A damaged frame is found by its checksums and heard as silence, so that what follows keeps its place.
 */
final class FlacReader extends DecodedSource {
    private static final int MARK = 4;
    private static final int BLOCK_HEAD = 4;
    private static final int STREAM_INFO = 34;
    /** A frame number may not ask for more silence than this at once; larger jumps are damage themselves. */
    private static final int LONGEST_GAP_FRAMES = 1 << 22;

    private final InputStream in;
    private final int sampleRate;
    private final int channels;
    private final int bitsPerSample;
    private final long promised;
    private final FlacFrame frame;
    private final byte[] buffer;
    private final int largestFrame;
    private final float[][] block;
    private int at;
    private int end;
    private boolean endOfFile;
    private boolean inDamage;
    private boolean damaged;
    private long decoded;
    /** Frames of silence still owed before the decoded frame. */
    private long silence;
    private boolean frameWaits;

    private FlacReader(InputStream in, int maxBlock, int sampleRate, int channels, int bits, long promised) {
        super(in);
        this.in = in;
        this.sampleRate = sampleRate;
        this.channels = channels;
        this.bitsPerSample = bits;
        this.promised = promised;
        this.frame = new FlacFrame(channels, bits, maxBlock);
        this.largestFrame = 64 + channels * (64 + (int) ((long) maxBlock * (bits + 1) / 8));
        this.buffer = new byte[2 * largestFrame + (1 << 16)];
        this.block = new float[channels][maxBlock];
    }

    static AudioSource open(InputStream in) throws IOException {
        byte[] b = in.readNBytes(MARK + BLOCK_HEAD + STREAM_INFO);
        if (b.length < MARK + BLOCK_HEAD + STREAM_INFO) {
            throw damaged("it ends in its header", null);
        }
        if ((b[MARK] & 0x7F) != 0 || size(b, MARK) != STREAM_INFO) {
            throw damaged("its stream description is missing", null);
        }
        skipMetadata(in, (b[MARK] & 0x80) != 0);
        int info = MARK + BLOCK_HEAD;
        int maxBlock = (b[info + 2] & 0xFF) << 8 | b[info + 3] & 0xFF;
        long packed = ByteBuffer.wrap(b).getLong(info + 10);
        int rate = (int) (packed >>> 44);
        int channels = (int) (packed >>> 41 & 7) + 1;
        int bits = (int) (packed >>> 36 & 31) + 1;
        if (maxBlock < 16 || bits < 4 || rate < 1) {
            throw damaged("it claims blocks of " + maxBlock + " samples of " + bits + " bits, " + rate + " a second", null);
        }
        return new FlacReader(in, maxBlock, rate, channels, bits, packed & 0xFFFFFFFFFL);
    }

    /** Pictures and comments. */
    private static void skipMetadata(InputStream in, boolean none) throws IOException {
        boolean last = none;
        while (!last) {
            byte[] head = in.readNBytes(BLOCK_HEAD);
            if (head.length < BLOCK_HEAD) {
                throw damaged("it ends in its header", null);
            }
            last = (head[0] & 0x80) != 0;
            try {
                in.skipNBytes(size(head, 0));
            } catch (EOFException e) {
                throw damaged("it ends in its header", e);
            }
        }
    }

    private static int size(byte[] b, int at) {
        return (b[at + 1] & 0xFF) << 16 | (b[at + 2] & 0xFF) << 8 | b[at + 3] & 0xFF;
    }

    private static AudioException damaged(String what, Throwable cause) {
        return new AudioException(AudioException.Kind.DAMAGED, "The FLAC file is damaged: " + what, cause);
    }

    @Override
    boolean decodeMore() throws IOException {
        if (silence > 0) {
            int n = (int) Math.min(silence, block[0].length);
            for (float[] channel : block) {
                Arrays.fill(channel, 0, n, 0f);
            }
            silence -= n;
            decoded += n;
            deliver(block, n);
            return true;
        }
        if (frameWaits) {
            frameWaits = false;
            handOver();
            return true;
        }
        refill();
        if (at >= end) {
            return false;
        }
        try {
            at = frame.decode(buffer, at, end);
        } catch (BadFrame e) {
            at++;
            inDamage = true;
            return true;
        }
        if (inDamage) {
            inDamage = false;
            damaged = true;
            long gap = frame.firstSample() - decoded;
            silence = gap > 0 && gap <= LONGEST_GAP_FRAMES ? gap : 0;
        }
        frameWaits = true;
        return true;
    }

    private void handOver() {
        float scale = 1f / (1L << bitsPerSample - 1);
        int frames = frame.blockSize();
        for (int c = 0; c < channels; c++) {
            long[] samples = frame.channel(c);
            for (int i = 0; i < frames; i++) {
                block[c][i] = samples[i] * scale;
            }
        }
        decoded += frames;
        deliver(block, frames);
    }

    /** Keeps a whole frame in the buffer as long as the file has one. */
    private void refill() throws IOException {
        if (endOfFile || end - at >= largestFrame) {
            return;
        }
        System.arraycopy(buffer, at, buffer, 0, end - at);
        end -= at;
        at = 0;
        int n = in.readNBytes(buffer, end, buffer.length - end);
        end += n;
        endOfFile = end < buffer.length;
    }

    @Override
    void atEnd() {
        if (promised > handedOut()) {
            remark("The file is cut off: its header promises " + promised + " samples a channel, it holds " + handedOut());
        }
        if (damaged || inDamage) {
            remark("Some blocks are damaged; they are heard as silence");
        }
    }

    @Override
    public String format() {
        return "FLAC, " + bitsPerSample + "-bit";
    }

    @Override
    public int sampleRate() {
        return sampleRate;
    }

    @Override
    public int channels() {
        return channels;
    }

    /** The header's promise is not believed: a cut-off file has less. */
    @Override
    public long frames() {
        return -1;
    }
}
