package org.girandole.music.audio;

import java.util.Arrays;

/** Reads the bits of one FLAC frame from a byte array, most significant first. */
final class FlacBits {
    private byte[] data;
    private int limit;
    private int at;
    private long cache;
    private int cached;

    /** What stands here is no frame, or a damaged one. Thrown often while searching, so it carries no stack trace. */
    static final class BadFrame extends Exception {
        private static final long serialVersionUID = 1L;

        BadFrame() {
            super(null, null, false, false);
        }
    }

    void begin(byte[] bytes, int from, int to) {
        data = bytes;
        at = from;
        limit = to;
        cache = 0;
        cached = 0;
    }

    /** Index of the next byte; what is left of a begun one is dropped. */
    int byteIndex() {
        return at - cached / 8;
    }

    void alignToByte() {
        cached -= cached % 8;
    }

    /** 0 to 32 bits. */
    long bits(int count) throws BadFrame {
        fill(count);
        cached -= count;
        return cache >>> cached & (1L << count) - 1;
    }

    /** Up to 33 bits in two's complement. */
    long signed(int count) throws BadFrame {
        if (count == 0) {
            return 0;
        }
        long value = count > 32 ? bits(count - 32) << 32 | bits(32) : bits(count);
        return value << 64 - count >> 64 - count;
    }

    /** Number of zero bits before the next one. */
    int unary() throws BadFrame {
        int zeros = 0;
        while (true) {
            if (cached == 0) {
                fill(1);
            }
            long rest = cache << 64 - cached;
            int leading = Long.numberOfLeadingZeros(rest);
            if (leading < cached) {
                cached -= leading + 1;
                return zeros + leading;
            }
            zeros += cached;
            cached = 0;
        }
    }

    private void fill(int count) throws BadFrame {
        while (cached < count) {
            if (at >= limit) {
                throw new BadFrame();
            }
            // At most 56 bits are held here, so that a byte always fits.
            while (cached <= 48 && at < limit) {
                cache = cache << 8 | data[at++] & 0xFF;
                cached += 8;
            }
        }
    }

    private static final int[] CRC8 = table(0x07, 8);
    private static final int[] CRC16 = table(0x8005, 16);

    private static int[] table(int polynomial, int width) {
        int[] table = new int[256];
        Arrays.setAll(table, i -> {
            int value = i << width - 8;
            for (int b = 0; b < 8; b++) {
                value = value << 1 ^ ((value & 1 << width - 1) != 0 ? polynomial : 0);
            }
            return value & (1 << width) - 1;
        });
        return table;
    }

    static int crc8(byte[] bytes, int from, int to) {
        int crc = 0;
        for (int i = from; i < to; i++) {
            crc = CRC8[crc ^ bytes[i] & 0xFF];
        }
        return crc;
    }

    static int crc16(byte[] bytes, int from, int to) {
        int crc = 0;
        for (int i = from; i < to; i++) {
            crc = (crc << 8 ^ CRC16[crc >> 8 ^ bytes[i] & 0xFF]) & 0xFFFF;
        }
        return crc;
    }
}
