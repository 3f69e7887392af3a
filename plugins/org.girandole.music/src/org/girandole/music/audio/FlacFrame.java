package org.girandole.music.audio;

import java.util.Arrays;
import org.girandole.music.audio.FlacBits.BadFrame;

/** Decodes one frame of a FLAC stream, RFC 9639 section 9. Reused for every frame of a file. */
final class FlacFrame {
    private static final int LEFT_SIDE = 8;
    private static final int SIDE_RIGHT = 9;
    private static final int MID_SIDE = 10;
    private static final int[] SAMPLE_BITS = { 0, 8, 12, -1, 16, 20, 24, 32 };
    /** Coefficients of the fixed predictors, nearest sample first (RFC 9639 table 21). */
    private static final int[][] FIXED = { {}, { 1 }, { 2, -1 }, { 3, -3, 1 }, { 4, -6, 4, -1 } };

    private final FlacBits in = new FlacBits();
    private final int channels;
    private final int streamBits;
    private final int maxBlock;
    private final long[][] samples;
    private int blockSize;
    private long firstSample;

    FlacFrame(int channels, int bitsPerSample, int maxBlock) {
        this.channels = channels;
        this.streamBits = bitsPerSample;
        this.maxBlock = maxBlock;
        this.samples = new long[channels][maxBlock];
    }

    int blockSize() {
        return blockSize;
    }

    /** Where the frame belongs in the whole, by its own number. */
    long firstSample() {
        return firstSample;
    }

    long[] channel(int index) {
        return samples[index];
    }

    /** @return index of the byte after the frame */
    int decode(byte[] bytes, int from, int to) throws BadFrame {
        in.begin(bytes, from, to);
        if (in.bits(15) != 0x7FFC) {
            throw new BadFrame();
        }
        boolean variable = in.bits(1) == 1;
        int sizeCode = (int) in.bits(4);
        int rateCode = (int) in.bits(4);
        int assignment = (int) in.bits(4);
        int bitsCode = (int) in.bits(3);
        if (in.bits(1) != 0 || sizeCode == 0 || rateCode == 15 || bitsCode == 3) {
            throw new BadFrame();
        }
        long number = codedNumber();
        blockSize = blockSize(sizeCode);
        in.bits(rateCode == 12 ? 8 : rateCode == 13 || rateCode == 14 ? 16 : 0);
        int headEnd = in.byteIndex();
        if (in.bits(8) != FlacBits.crc8(bytes, from, headEnd)) {
            throw new BadFrame();
        }
        int bits = bitsCode == 0 ? streamBits : SAMPLE_BITS[bitsCode];
        int held = assignment < LEFT_SIDE ? assignment + 1 : 2;
        if (held != channels || assignment > MID_SIDE || bits != streamBits || blockSize > maxBlock) {
            throw new BadFrame();
        }
        firstSample = variable ? number : number * maxBlock;
        for (int c = 0; c < channels; c++) {
            boolean side = assignment >= LEFT_SIDE && c == (assignment == SIDE_RIGHT ? 0 : 1);
            subframe(samples[c], bits + (side ? 1 : 0));
        }
        in.alignToByte();
        int dataEnd = in.byteIndex();
        if (in.bits(16) != FlacBits.crc16(bytes, from, dataEnd)) {
            throw new BadFrame();
        }
        decorrelate(assignment);
        return dataEnd + 2;
    }

    /** A number of up to 36 bits in the pattern of UTF-8. */
    private long codedNumber() throws BadFrame {
        int first = (int) in.bits(8);
        int more = Integer.numberOfLeadingZeros(~(first << 24));
        if (more == 0) {
            return first;
        }
        if (more == 1 || more > 7) {
            throw new BadFrame();
        }
        long value = first & (1 << 7 - more) - 1;
        for (int i = 1; i < more; i++) {
            if (in.bits(2) != 2) {
                throw new BadFrame();
            }
            value = value << 6 | in.bits(6);
        }
        return value;
    }

    private int blockSize(int code) throws BadFrame {
        return switch (code) {
            case 1 -> 192;
            case 2, 3, 4, 5 -> 576 << code - 2;
            case 6 -> (int) in.bits(8) + 1;
            case 7 -> (int) in.bits(16) + 1;
            default -> 256 << code - 8;
        };
    }

    private void subframe(long[] out, int bits) throws BadFrame {
        if (in.bits(1) != 0) {
            throw new BadFrame();
        }
        int type = (int) in.bits(6);
        int wasted = in.bits(1) == 1 ? in.unary() + 1 : 0;
        int width = bits - wasted;
        if (width < 1) {
            throw new BadFrame();
        }
        if (type == 0) {
            Arrays.fill(out, 0, blockSize, in.signed(width));
        } else if (type == 1) {
            warmUp(out, blockSize, width);
        } else if (type >= 8 && type <= 12) {
            fixed(out, type - 8, width);
        } else if (type >= 32) {
            linear(out, type - 31, width);
        } else {
            throw new BadFrame();
        }
        for (int i = 0; wasted > 0 && i < blockSize; i++) {
            out[i] <<= wasted;
        }
    }

    private void warmUp(long[] out, int count, int width) throws BadFrame {
        if (count > blockSize) {
            throw new BadFrame();
        }
        for (int i = 0; i < count; i++) {
            out[i] = in.signed(width);
        }
    }

    private void fixed(long[] out, int order, int width) throws BadFrame {
        warmUp(out, order, width);
        residual(out, order);
        predict(out, FIXED[order], 0);
    }

    private void linear(long[] out, int order, int width) throws BadFrame {
        warmUp(out, order, width);
        int precision = (int) in.bits(4) + 1;
        int shift = (int) in.signed(5);
        if (precision == 16 || shift < 0) {
            throw new BadFrame();
        }
        int[] coefficients = new int[order];
        for (int i = 0; i < order; i++) {
            coefficients[i] = (int) in.signed(precision);
        }
        residual(out, order);
        predict(out, coefficients, shift);
    }

    private void predict(long[] out, int[] coefficients, int shift) {
        int order = coefficients.length;
        for (int i = order; i < blockSize; i++) {
            long sum = 0;
            for (int j = 0; j < order; j++) {
                sum += coefficients[j] * out[i - 1 - j];
            }
            out[i] += sum >> shift;
        }
    }

    private void residual(long[] out, int order) throws BadFrame {
        int method = (int) in.bits(2);
        int partitionOrder = (int) in.bits(4);
        int perPartition = blockSize >> partitionOrder;
        if (method > 1 || perPartition << partitionOrder != blockSize || perPartition < order) {
            throw new BadFrame();
        }
        int parameterBits = method == 0 ? 4 : 5;
        int escape = (1 << parameterBits) - 1;
        int at = order;
        for (int p = 1; p <= 1 << partitionOrder; p++) {
            int end = p * perPartition;
            int parameter = (int) in.bits(parameterBits);
            if (parameter == escape) {
                int width = (int) in.bits(5);
                while (at < end) {
                    out[at++] = in.signed(width);
                }
            } else {
                while (at < end) {
                    long folded = (long) in.unary() << parameter | in.bits(parameter);
                    out[at++] = folded >>> 1 ^ -(folded & 1);
                }
            }
        }
    }

    private void decorrelate(int assignment) {
        if (assignment < LEFT_SIDE) {
            return;
        }
        long[] a = samples[0];
        long[] b = samples[1];
        for (int i = 0; i < blockSize; i++) {
            if (assignment == LEFT_SIDE) {
                b[i] = a[i] - b[i];
            } else if (assignment == SIDE_RIGHT) {
                a[i] += b[i];
            } else {
                long side = b[i];
                long mid = a[i] << 1 | side & 1;
                a[i] = mid + side >> 1;
                b[i] = mid - side >> 1;
            }
        }
    }
}
