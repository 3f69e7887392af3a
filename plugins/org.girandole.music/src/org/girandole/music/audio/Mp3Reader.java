package org.girandole.music.audio;

import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Path;
import javazoom.jl.decoder.Bitstream;
import javazoom.jl.decoder.BitstreamException;
import javazoom.jl.decoder.Decoder;
import javazoom.jl.decoder.DecoderException;
import javazoom.jl.decoder.Header;
import javazoom.jl.decoder.Obuffer;

/** MPEG-1, 2 and 2.5 audio, layers 1 to 3, through the JLayer library; the encoder's delay is taken off where it is told. */
final class Mp3Reader extends DecodedSource {
    /** Delay of every layer 3 decoder, its synthesis filter and overlap: 528 samples and one. */
    private static final int DECODER_DELAY = 529;
    /** The library works at this full scale. */
    private static final float SCALE = 1f / 32700f;
    private static final int MOST_SAMPLES = 1152;

    private final Bitstream bits;
    private final Decoder decoder = new Decoder();
    private final Collector out = new Collector();
    private final int sampleRate;
    private final int channels;
    private final int layer;
    private Header pending;
    private int damaged;

    private Mp3Reader(InputStream in, Bitstream bits, Header first, Mp3Header said) {
        super(in);
        this.bits = bits;
        this.pending = first;
        this.sampleRate = first.frequency();
        this.channels = first.mode() == Header.SINGLE_CHANNEL ? 1 : 2;
        this.layer = first.layer();
        decoder.setOutputBuffer(out);
        int perFrame = first.version() == Header.MPEG1 ? 1152 : 576;
        if (said.infoFrame()) {
            bits.closeFrame();
            pending = null;
        }
        if (said.delay() >= 0) {
            leaveOut(said.delay() + DECODER_DELAY);
            if (said.frames() > 0) {
                endAt(Math.max(0, said.frames() * perFrame - said.delay() - said.padding()));
            }
        }
    }

    static AudioSource open(Path file, InputStream in) throws IOException {
        Mp3Header said = Mp3Header.of(file);
        Bitstream bits = new Bitstream(in);
        try {
            Header first = bits.readFrame();
            if (first == null) {
                throw new AudioException(AudioException.Kind.NOT_AUDIO, "The file begins like MP3 but holds no MPEG audio");
            }
            return new Mp3Reader(in, bits, first, said);
        } catch (BitstreamException | RuntimeException e) {
            throw new AudioException(AudioException.Kind.NOT_AUDIO, "The file begins like MP3 but holds no MPEG audio", e);
        }
    }

    @Override
    boolean decodeMore() throws IOException {
        try {
            Header header = pending != null ? pending : bits.readFrame();
            pending = null;
            if (header == null) {
                return false;
            }
            if (header.frequency() != sampleRate) {
                bits.closeFrame();
                damaged++;
                return true;
            }
            out.begin(header.mode() == Header.SINGLE_CHANNEL ? 1 : 2);
            decode(header);
            bits.closeFrame();
            deliver(out.samples(), out.frames());
            return true;
        } catch (BitstreamException e) {
            // Past the last whole frame the library reports an error, not an end.
            return false;
        }
    }

    /** A frame that cannot be decoded is silence of its length: what follows stays in its place. */
    private void decode(Header header) {
        try {
            decoder.decodeFrame(header, bits);
        } catch (DecoderException | ArrayIndexOutOfBoundsException | NullPointerException e) {
            damaged++;
            out.silence(header.version() == Header.MPEG1 ? 1152 : 576);
        }
    }

    @Override
    void atEnd() {
        if (damaged > 0) {
            remark(damaged + " frames are damaged; they are heard as silence or left out");
        }
    }

    @Override
    public String format() {
        return layer == 3 ? "MP3" : "MPEG audio layer " + layer;
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
        return -1;
    }

    /** Takes the samples before the library clips them to 16 bits. */
    private final class Collector extends Obuffer {
        private final float[][] samples = new float[2][2 * MOST_SAMPLES];
        private final int[] at = new int[2];
        private int held = 2;

        void begin(int heldChannels) {
            held = heldChannels;
            at[0] = 0;
            at[1] = 0;
        }

        void silence(int frames) {
            for (int c = 0; c < 2; c++) {
                java.util.Arrays.fill(samples[c], 0, frames, 0f);
                at[c] = frames;
            }
        }

        /** A frame of the other channel count is spread or halved, so that the file keeps its number of channels. */
        float[][] samples() {
            return channels == 2 && held == 1 ? new float[][] { samples[0], samples[0] } : samples;
        }

        int frames() {
            return at[0];
        }

        @Override
        public void appendSamples(int channel, float[] values) {
            int start = at[channel];
            int count = Math.min(values.length, samples[channel].length - start);
            for (int i = 0; i < count; i++) {
                samples[channel][start + i] = values[i] * SCALE;
            }
            at[channel] = start + count;
        }

        @Override
        public void append(int channel, short value) {
            if (at[channel] < samples[channel].length) {
                samples[channel][at[channel]++] = value * SCALE;
            }
        }

        @Override
        public void write_buffer(int ignored) {
            // The samples are taken when the frame is complete.
        }

        @Override
        public void close() {
            // Nothing is held open.
        }

        @Override
        public void clear_buffer() {
            begin(held);
        }

        @Override
        public void set_stop_flag() {
            // Nothing plays.
        }
    }
}
