package org.girandole.music.audio;

import java.io.EOFException;
import java.io.IOException;
import java.io.InputStream;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.charset.StandardCharsets;

/** Walks the chunks of a RIFF or IFF file: four letters, a size, a body, a pad byte when the size is odd. */
final class Chunks {
    /** No chunk whose body is read whole is larger in a sound file that is one. */
    private static final int LARGEST_BODY = 1 << 20;

    private final InputStream in;
    private final ByteOrder order;
    private long left;

    record Head(String id, long size) {
    }

    Chunks(InputStream in, long fileSize, ByteOrder order) {
        this.in = in;
        this.left = fileSize;
        this.order = order;
    }

    /** Bytes to the end of the file. */
    long left() {
        return left;
    }

    boolean hasChunk() {
        return left >= 8;
    }

    Head chunk() throws IOException {
        byte[] head = take(8);
        String id = new String(head, 0, 4, StandardCharsets.ISO_8859_1);
        return new Head(id, ByteBuffer.wrap(head).order(order).getInt(4) & 0xFFFFFFFFL);
    }

    /** Whether the next bytes could begin a chunk that fits into the file. */
    boolean looksLikeChunk() throws IOException {
        if (left < 8) {
            return false;
        }
        in.mark(8);
        byte[] head = in.readNBytes(8);
        in.reset();
        for (int i = 0; i < 4; i++) {
            if (head[i] < ' ' || head[i] > '~') {
                return false;
            }
        }
        return (ByteBuffer.wrap(head).order(order).getInt(4) & 0xFFFFFFFFL) <= left - 8;
    }

    byte[] body(Head head, int least) throws IOException {
        if (head.size() < least || head.size() > LARGEST_BODY) {
            throw new AudioException(AudioException.Kind.DAMAGED, "The file is damaged: its '" + head.id() + "' chunk has "
                    + head.size() + " bytes; at least " + least + " were expected");
        }
        byte[] body = take((int) head.size());
        skip(Math.min(left, head.size() & 1));
        return body;
    }

    void skipBody(Head head) throws IOException {
        skip(Math.min(left, head.size() + (head.size() & 1)));
    }

    void skip(long count) throws IOException {
        try {
            in.skipNBytes(count);
        } catch (EOFException e) {
            throw endOfFile(e);
        }
        left -= count;
    }

    private byte[] take(int count) throws IOException {
        byte[] bytes = in.readNBytes(count);
        if (bytes.length < count) {
            throw endOfFile(null);
        }
        left -= count;
        return bytes;
    }

    private static AudioException endOfFile(Throwable cause) {
        return new AudioException(AudioException.Kind.DAMAGED, "The file ends in the middle of its header", cause);
    }

    static int little16(byte[] b, int at) {
        return (b[at] & 0xFF) | (b[at + 1] & 0xFF) << 8;
    }

    static int little32(byte[] b, int at) {
        return little16(b, at) | little16(b, at + 2) << 16;
    }

    static long little64(byte[] b, int at) {
        return (little32(b, at) & 0xFFFFFFFFL) | (long) little32(b, at + 4) << 32;
    }
}
