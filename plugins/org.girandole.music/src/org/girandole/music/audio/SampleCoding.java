package org.girandole.music.audio;

import java.nio.ByteBuffer;
import java.nio.ByteOrder;

/** How one sample lies in the bytes of an uncompressed file. */
record SampleCoding(Kind kind, int bytes, ByteOrder order) {
    enum Kind {
        SIGNED, UNSIGNED, FLOAT
    }

    /** Full scale is 2^(bits - 1), so that the loudest negative sample is exactly -1. */
    float read(ByteBuffer from, int at) {
        if (kind == Kind.FLOAT) {
            return bytes == 4 ? from.getFloat(at) : (float) from.getDouble(at);
        }
        if (bytes == 1) {
            int value = from.get(at);
            return (kind == Kind.UNSIGNED ? (value & 0xFF) - 128 : value) / 128f;
        }
        if (bytes == 2) {
            return from.getShort(at) / 32768f;
        }
        if (bytes == 3) {
            int low = order == ByteOrder.LITTLE_ENDIAN ? from.get(at) : from.get(at + 2);
            int high = order == ByteOrder.LITTLE_ENDIAN ? from.get(at + 2) : from.get(at);
            return ((high << 16) | ((from.get(at + 1) & 0xFF) << 8) | (low & 0xFF)) / 8388608f;
        }
        return (float) (from.getInt(at) / 2147483648.0);
    }

    String words() {
        return bytes * 8 + (kind == Kind.FLOAT ? "-bit float" : "-bit PCM");
    }
}
