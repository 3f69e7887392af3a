package org.girandole.cli;

import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import javax.sound.sampled.AudioFileFormat;
import javax.sound.sampled.AudioFormat;
import javax.sound.sampled.AudioInputStream;
import javax.sound.sampled.AudioSystem;
import org.girandole.music.synth.Piece;
import org.girandole.music.synth.PieceRenderer;

/** Sound with known times: 44.1 kHz, 16 bit. */
record Recording(byte[] samples, int channels) {
    static final int RATE = 44_100;

    static Recording of(Piece piece) {
        return new Recording(PieceRenderer.render(piece), 2);
    }

    static Recording silence(int seconds) {
        return new Recording(new byte[2 * RATE * seconds], 1);
    }

    /** Reads a WAV file with the reader of the Java platform. */
    static Recording read(Path wav) throws Exception {
        try (AudioInputStream in = AudioSystem.getAudioInputStream(wav.toFile())) {
            return new Recording(in.readAllBytes(), in.getFormat().getChannels());
        }
    }

    /** The sound without what lies between two times. */
    Recording without(long fromUs, long toUs) {
        int from = byteAt(fromUs);
        int to = byteAt(toUs);
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        out.write(samples, 0, from);
        out.write(samples, to, samples.length - to);
        return new Recording(out.toByteArray(), channels);
    }

    private int byteAt(long us) {
        return (int) (us * RATE / 1_000_000) * 2 * channels;
    }

    /** The mean of the channels, -32768 to 32767. */
    double[] mono() {
        ByteBuffer in = ByteBuffer.wrap(samples).order(ByteOrder.LITTLE_ENDIAN);
        double[] mono = new double[samples.length / 2 / channels];
        Arrays.setAll(mono, i -> {
            double sum = 0;
            for (int c = 0; c < channels; c++) {
                sum += in.getShort(2 * (i * channels + c));
            }
            return sum / channels;
        });
        return mono;
    }

    Path write(Path wav) throws IOException {
        AudioFormat format = new AudioFormat(RATE, 16, channels, true, false);
        try (AudioInputStream in = new AudioInputStream(new ByteArrayInputStream(samples), format, samples.length / 2 / channels);
                var out = Files.newOutputStream(wav)) {
            AudioSystem.write(in, AudioFileFormat.Type.WAVE, out);
        }
        return wav;
    }
}
