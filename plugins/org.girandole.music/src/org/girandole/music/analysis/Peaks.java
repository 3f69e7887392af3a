package org.girandole.music.analysis;

import java.io.BufferedInputStream;
import java.io.BufferedOutputStream;
import java.io.DataInputStream;
import java.io.DataOutputStream;
import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.girandole.music.audio.AudioFiles;

/**
 * What a waveform is drawn from: lowest, highest and root mean square sample of the mix of all channels in spans of 256
 * frames, and of four times that, and so on, so that any zoom reads a few values a column. Immutable; see {@link PeaksCache}.
 */
public final class Peaks {
    static final int BASE = 256;
    private static final int FACTOR = 4;
    private static final int MAGIC = 0x47505031;
    /** Three hours at 192 kHz; a damaged cache must not ask for more. */
    private static final int MOST_SPANS = 1 << 23;

    private final int sampleRate;
    private final long frames;
    private final List<Level> levels;

    /** One zoom; samples in 1/32767 of full scale. */
    private record Level(short[] low, short[] high, short[] rms) {
    }

    /** What to draw: a value a column, each in -1 to 1 ({@code rms}: 0 to 1). */
    public record Columns(float[] low, float[] high, float[] rms) {
    }

    private Peaks(int sampleRate, long frames, Level base) {
        this.sampleRate = sampleRate;
        this.frames = frames;
        this.levels = new ArrayList<>();
        levels.add(base);
        for (Level l = base; l.low.length > FACTOR; l = coarser(l)) {
            levels.add(coarser(l));
        }
    }

    private static Level coarser(Level fine) {
        int n = (fine.low.length + FACTOR - 1) / FACTOR;
        Level coarse = new Level(new short[n], new short[n], new short[n]);
        for (int i = 0; i < n; i++) {
            set(coarse, i, fine, i * FACTOR, Math.min(fine.low.length, (i + 1) * FACTOR));
        }
        return coarse;
    }

    private static void set(Level to, int index, Level from, int begin, int end) {
        short low = Short.MAX_VALUE;
        short high = Short.MIN_VALUE;
        double squares = 0;
        for (int i = begin; i < end; i++) {
            low = (short) Math.min(low, from.low[i]);
            high = (short) Math.max(high, from.high[i]);
            squares += (double) from.rms[i] * from.rms[i];
        }
        to.low[index] = low;
        to.high[index] = high;
        to.rms[index] = (short) Math.round(Math.sqrt(squares / Math.max(1, end - begin)));
    }

    /** Length of the sound. */
    public long lengthUs() {
        return AudioFiles.lengthUs(frames, sampleRate);
    }

    /**
     * The columns of a drawing of the time from {@code fromUs} to {@code toUs}. Times outside the sound are silent. Columns
     * narrower than 256 frames repeat the span they lie in.
     */
    public Columns columns(long fromUs, long toUs, int count) {
        Columns out = new Columns(new float[count], new float[count], new float[count]);
        double framesPerColumn = (double) (toUs - fromUs) * sampleRate / 1e6 / count;
        int level = 0;
        while (level + 1 < levels.size() && framesPerColumn >= span(level + 1)) {
            level++;
        }
        Level source = levels.get(level);
        Level one = new Level(new short[1], new short[1], new short[1]);
        double first = (double) fromUs * sampleRate / 1e6;
        for (int i = 0; i < count; i++) {
            long begin = (long) Math.floor((first + i * framesPerColumn) / span(level));
            long end = Math.max(begin + 1, (long) Math.floor((first + (i + 1) * framesPerColumn) / span(level)));
            int b = (int) Math.max(0, Math.min(begin, source.low.length));
            int e = (int) Math.max(b, Math.min(end, source.low.length));
            if (e > b) {
                set(one, 0, source, b, e);
                out.low[i] = one.low[0] / 32767f;
                out.high[i] = one.high[0] / 32767f;
                out.rms[i] = one.rms[0] / 32767f;
            }
        }
        return out;
    }

    private static double span(int level) {
        return BASE * Math.pow(FACTOR, level);
    }

    void write(OutputStream out) throws IOException {
        DataOutputStream data = new DataOutputStream(new BufferedOutputStream(out));
        Level base = levels.get(0);
        data.writeInt(MAGIC);
        data.writeInt(sampleRate);
        data.writeLong(frames);
        data.writeInt(base.low.length);
        for (int i = 0; i < base.low.length; i++) {
            data.writeShort(base.low[i]);
            data.writeShort(base.high[i]);
            data.writeShort(base.rms[i]);
        }
        data.flush();
    }

    static Peaks read(InputStream in) throws IOException {
        DataInputStream data = new DataInputStream(new BufferedInputStream(in));
        if (data.readInt() != MAGIC) {
            throw new IOException("not a file of waveform peaks");
        }
        int rate = data.readInt();
        long frames = data.readLong();
        int n = data.readInt();
        if (rate < 1 || n < 0 || n > MOST_SPANS || n != (frames + BASE - 1) / BASE) {
            throw new IOException("a damaged file of waveform peaks");
        }
        Level base = new Level(new short[n], new short[n], new short[n]);
        for (int i = 0; i < n; i++) {
            base.low[i] = data.readShort();
            base.high[i] = data.readShort();
            base.rms[i] = data.readShort();
        }
        return new Peaks(rate, frames, base);
    }

    /** Gathers peaks from the samples going by. */
    static final class Builder implements SampleSink {
        private final int sampleRate;
        private short[] low = new short[1024];
        private short[] high = new short[1024];
        private short[] rms = new short[1024];
        private int spans;
        private int inSpan;
        private float lowest;
        private float highest;
        private double squares;
        private long frames;

        Builder(int sampleRate) {
            this.sampleRate = sampleRate;
        }

        @Override
        public void take(float[][] channels, int count) {
            float share = 1f / channels.length;
            for (int i = 0; i < count; i++) {
                float mix = 0;
                for (float[] channel : channels) {
                    mix += channel[i];
                }
                mix *= share;
                lowest = inSpan == 0 ? mix : Math.min(lowest, mix);
                highest = inSpan == 0 ? mix : Math.max(highest, mix);
                squares += mix * mix;
                if (++inSpan == BASE) {
                    endSpan();
                }
            }
            frames += count;
        }

        private void endSpan() {
            if (spans == low.length) {
                low = Arrays.copyOf(low, 2 * spans);
                high = Arrays.copyOf(high, 2 * spans);
                rms = Arrays.copyOf(rms, 2 * spans);
            }
            low[spans] = scaled(lowest);
            high[spans] = scaled(highest);
            rms[spans] = scaled((float) Math.sqrt(squares / inSpan));
            spans++;
            inSpan = 0;
            squares = 0;
        }

        private static short scaled(float value) {
            return (short) Math.round(Math.max(-1f, Math.min(1f, value)) * 32767);
        }

        Peaks peaks() {
            if (inSpan > 0) {
                endSpan();
            }
            return new Peaks(sampleRate, frames, new Level(Arrays.copyOf(low, spans),
                    Arrays.copyOf(high, spans), Arrays.copyOf(rms, spans)));
        }
    }
}
