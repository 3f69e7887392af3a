package org.girandole.music.audio;

import java.io.BufferedInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;

/**
 * What the first frame of an MP3 file says beside its sound: the Xing/Info frame with the number of frames and, after
 * it, the encoder's delay and padding, so that the music keeps its place in time.
 *
 * @param infoFrame whether the first frame carries no sound but this information
 * @param frames    number of frames that do carry sound, -1 if not said
 * @param delay     samples that the encoder put before the music, -1 if not said
 * @param padding   samples that it put behind
 */
record Mp3Header(boolean infoFrame, long frames, int delay, int padding) {
    private static final Mp3Header NONE = new Mp3Header(false, -1, -1, 0);
    private static final int SEARCHED = 1 << 16;

    /** Whether four bytes can begin a frame: eleven sync bits and no reserved value (ISO/IEC 11172-3, 2.4.2.3). */
    static boolean isSync(byte[] b) {
        return (b[0] & 0xFF) == 0xFF && (b[1] & 0xE0) == 0xE0 && (b[1] & 0x18) != 0x08 && (b[1] & 0x06) != 0
                && (b[2] & 0xF0) != 0xF0 && (b[2] & 0x0C) != 0x0C;
    }

    static Mp3Header of(Path file) throws IOException {
        try (InputStream in = new BufferedInputStream(Files.newInputStream(file))) {
            byte[] window = afterTags(in);
            for (int at = 0; at + 200 < window.length; at++) {
                if (isSync(new byte[] { window[at], window[at + 1], window[at + 2] })) {
                    return at(window, at);
                }
            }
            return NONE;
        }
    }

    private static byte[] afterTags(InputStream in) throws IOException {
        in.mark(10);
        byte[] head = in.readNBytes(10);
        while (head.length == 10 && head[0] == 'I' && head[1] == 'D' && head[2] == '3') {
            int size = (head[6] & 0x7F) << 21 | (head[7] & 0x7F) << 14 | (head[8] & 0x7F) << 7 | (head[9] & 0x7F);
            in.skip(size);
            in.mark(10);
            head = in.readNBytes(10);
        }
        in.reset();
        return in.readNBytes(SEARCHED);
    }

    private static Mp3Header at(byte[] b, int at) {
        boolean mpeg1 = (b[at + 1] & 0x18) == 0x18;
        boolean mono = (b[at + 3] & 0xC0) == 0xC0;
        int side = mpeg1 ? (mono ? 17 : 32) : (mono ? 9 : 17);
        int tag = at + 4 + side;
        String id = new String(b, tag, 4, StandardCharsets.ISO_8859_1);
        if (!id.equals("Xing") && !id.equals("Info")) {
            return NONE;
        }
        ByteBuffer view = ByteBuffer.wrap(b);
        int flags = view.getInt(tag + 4);
        int next = tag + 8;
        long frames = -1;
        if ((flags & 1) != 0) {
            frames = view.getInt(next) & 0xFFFFFFFFL;
            next += 4;
        }
        next += (flags & 2) != 0 ? 4 : 0;
        next += (flags & 4) != 0 ? 100 : 0;
        next += (flags & 8) != 0 ? 4 : 0;
        if (next + 24 > b.length || b[next] == 0) {
            return new Mp3Header(true, frames, -1, 0);
        }
        int delays = (b[next + 21] & 0xFF) << 16 | (b[next + 22] & 0xFF) << 8 | (b[next + 23] & 0xFF);
        return new Mp3Header(true, frames, delays >> 12, delays & 0xFFF);
    }
}
