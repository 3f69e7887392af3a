package org.girandole.music.audio;

import java.io.IOException;
import java.io.InputStream;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.charset.StandardCharsets;

/** Audio Interchange File Format 1.3 (1989) and the uncompressed kinds of AIFF-C (1991): NONE, twos, sowt, fl32, fl64. */
final class AiffReader {

    private AiffReader() {
    }

    static AudioSource open(InputStream stream, long fileSize) throws IOException {
        Chunks in = new Chunks(stream, fileSize, ByteOrder.BIG_ENDIAN);
        in.skip(12);
        Common common = null;
        while (in.hasChunk()) {
            Chunks.Head head = in.chunk();
            switch (head.id()) {
                case "COMM" -> common = Common.of(in.body(head, 18));
                case "SSND" -> {
                    if (common == null) {
                        throw damaged("its samples come before the description of their format");
                    }
                    // The offset before the first sample is for block-aligned writing and nearly always 0.
                    byte[] offset = new byte[8];
                    if (stream.readNBytes(offset, 0, 8) < 8) {
                        throw damaged("it ends where its samples should begin");
                    }
                    long skip = ByteBuffer.wrap(offset).getInt(0) & 0xFFFFFFFFL;
                    if (skip + 8 > in.left()) {
                        throw damaged("its samples begin beyond its end");
                    }
                    stream.skipNBytes(skip);
                    return common.source(stream, in.left() - 8 - skip);
                }
                default -> in.skipBody(head);
            }
        }
        throw damaged(common == null ? "the 'COMM' and 'SSND' chunks are missing" : "the 'SSND' chunk is missing");
    }

    private static AudioException damaged(String what) {
        return new AudioException(AudioException.Kind.DAMAGED, "The AIFF file is damaged: " + what);
    }

    private record Common(int channels, long frames, int bits, double sampleRate, String coding) {

        static Common of(byte[] body) {
            ByteBuffer b = ByteBuffer.wrap(body);
            String coding = body.length >= 22 ? new String(body, 18, 4, StandardCharsets.ISO_8859_1) : "NONE";
            return new Common(b.getShort(0), b.getInt(2) & 0xFFFFFFFFL, b.getShort(6), extended(b, 8), coding);
        }

        /** The 80-bit IEEE 754 extended number: sign and 15 bits of exponent, then 64 bits of mantissa. */
        private static double extended(ByteBuffer b, int at) {
            int exponent = (b.getShort(at) & 0x7FFF) - 16383 - 63;
            long mantissa = b.getLong(at + 2);
            double magnitude = (mantissa >>> 1) * 2.0 + (mantissa & 1);
            return Math.scalb(magnitude, exponent);
        }

        AudioSource source(InputStream in, long held) throws AudioException {
            boolean floating = coding.equalsIgnoreCase("fl32") || coding.equalsIgnoreCase("fl64");
            if (!floating && !coding.equals("NONE") && !coding.equals("twos") && !coding.equals("sowt")) {
                throw new AudioException(AudioException.Kind.UNSUPPORTED,
                        "The AIFF-C file holds compressed sound; save it as uncompressed AIFF");
            }
            int bytes = floating ? (coding.endsWith("32") ? 4 : 8) : (bits + 7) / 8;
            boolean rate = sampleRate >= 1 && sampleRate <= 10e6;
            if (channels < 1 || channels > 32 || bytes < 1 || !floating && bytes > 4 || !rate) {
                throw damaged("it claims " + channels + " channels of " + bits + " bits at " + sampleRate + " samples a second");
            }
            ByteOrder order = coding.equals("sowt") ? ByteOrder.LITTLE_ENDIAN : ByteOrder.BIG_ENDIAN;
            SampleCoding.Kind kind = floating ? SampleCoding.Kind.FLOAT : SampleCoding.Kind.SIGNED;
            return new PcmSource(in, "AIFF", (int) Math.round(sampleRate), channels, new SampleCoding(kind, bytes, order),
                    frames, held);
        }
    }
}
