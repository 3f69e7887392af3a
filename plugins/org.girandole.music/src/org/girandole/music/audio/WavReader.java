package org.girandole.music.audio;

import java.io.IOException;
import java.io.InputStream;
import java.nio.ByteOrder;

/**
 * RIFF/WAVE by the Multimedia Programming Interface and Data Specifications 1.0 (1991), the extensible format tag, and
 * the 64-bit sizes of RF64 (EBU Tech 3306).
 */
final class WavReader {
    private static final int PCM = 1;
    private static final int IEEE_FLOAT = 3;
    private static final int EXTENSIBLE = 0xFFFE;
    private static final long UNKNOWN_SIZE = 0xFFFFFFFFL;

    private WavReader() {
    }

    static AudioSource open(InputStream stream, long fileSize) throws IOException {
        Chunks in = new Chunks(stream, fileSize, ByteOrder.LITTLE_ENDIAN);
        in.skip(12);
        long longDataSize = -1;
        Format format = null;
        while (in.hasChunk()) {
            Chunks.Head head = in.chunk();
            switch (head.id()) {
                case "ds64" -> {
                    byte[] body = in.body(head, 28);
                    longDataSize = Chunks.little64(body, 8);
                }
                case "fmt " -> format = Format.of(in.body(head, 16));
                case "data" -> {
                    if (format == null) {
                        throw damaged("its samples come before the description of their format");
                    }
                    long size = head.size() == UNKNOWN_SIZE && longDataSize >= 0 ? longDataSize : head.size();
                    // A writer that could not seek back leaves 0 or the largest number: then the samples go to the end.
                    boolean streamed = size == UNKNOWN_SIZE || size == 0 && in.left() > 0 && !in.looksLikeChunk();
                    return format.source(stream, streamed ? in.left() : size, in.left());
                }
                default -> in.skipBody(head);
            }
        }
        throw damaged(format == null ? "the 'fmt ' and 'data' chunks are missing" : "the 'data' chunk is missing");
    }

    private static AudioException damaged(String what) {
        return new AudioException(AudioException.Kind.DAMAGED, "The WAV file is damaged: " + what);
    }

    private record Format(int tag, int channels, int sampleRate, int blockAlign, int bits) {

        static Format of(byte[] b) {
            int tag = Chunks.little16(b, 0);
            if (tag == EXTENSIBLE && b.length >= 26) {
                tag = Chunks.little16(b, 24);
            }
            return new Format(tag, Chunks.little16(b, 2), Chunks.little32(b, 4), Chunks.little16(b, 12), Chunks.little16(b, 14));
        }

        AudioSource source(InputStream in, long dataSize, long held) throws AudioException {
            if (tag != PCM && tag != IEEE_FLOAT) {
                throw new AudioException(AudioException.Kind.UNSUPPORTED, String.format(java.util.Locale.ROOT,
                        "The WAV file holds compressed sound (format tag 0x%04X); save it as PCM", tag));
            }
            if (channels < 1 || channels > 32 || sampleRate < 1) {
                throw damaged("it claims " + channels + " channels at " + sampleRate + " samples a second");
            }
            int bytes = blockAlign / channels;
            boolean known = tag == IEEE_FLOAT ? bytes == 4 || bytes == 8 : bytes >= 1 && bytes <= 4;
            if (!known || bytes * channels != blockAlign || bits > bytes * 8) {
                throw damaged("it claims " + bits + " bits in " + blockAlign + " bytes for " + channels + " channels");
            }
            SampleCoding.Kind kind = tag == IEEE_FLOAT ? SampleCoding.Kind.FLOAT
                    : bytes == 1 ? SampleCoding.Kind.UNSIGNED : SampleCoding.Kind.SIGNED;
            return new PcmSource(in, "WAV", sampleRate, channels, new SampleCoding(kind, bytes, ByteOrder.LITTLE_ENDIAN),
                    dataSize / blockAlign, held);
        }
    }
}
