package org.girandole.benchmarks.music;

import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Path;
import java.util.Arrays;
import javax.sound.sampled.AudioFileFormat;
import javax.sound.sampled.AudioFormat;
import javax.sound.sampled.AudioInputStream;
import javax.sound.sampled.AudioSystem;
import javax.sound.sampled.UnsupportedAudioFileException;
import org.girandole.music.Rational;
import org.girandole.music.synth.Piece;

/**
 * Plays pieces with the synthesizer of the Java platform: instruments that are not the program's own, so that its finders are measured on
 * sounds that nobody made for them. Their noise is drawn at random once for each user, and differs between machines.
 */
final class PlatformSynthesizer {
    static final int SAMPLE_RATE = 44_100;
    private static final int FRAME_BYTES = 4;
    private static final long RING_US = 2_000_000;
    /** Measured with strokes at 60 odd times on OpenJDK 17: every one begins 600 samples late, two buffers of the synthesizer. */
    private static final int LATENCY_FRAMES = 600;

    private PlatformSynthesizer() {
    }

    /** Little-endian signed 16-bit stereo, up to 2 s after the end of the piece. */
    static byte[] render(Piece piece) {
        ByteArrayOutputStream midi = new ByteArrayOutputStream();
        try {
            piece.writeMidi(midi);
            long endUs = piece.map().timeUsOfBar(piece.bars() + 1, Rational.ONE) + RING_US;
            try (AudioInputStream in = AudioSystem.getAudioInputStream(new ByteArrayInputStream(midi.toByteArray()))) {
                in.skipNBytes((long) LATENCY_FRAMES * FRAME_BYTES);
                int bytes = (int) (endUs * SAMPLE_RATE / 1_000_000) * FRAME_BYTES;
                return Arrays.copyOf(in.readNBytes(bytes), bytes);
            }
        } catch (UnsupportedAudioFileException e) {
            throw new IllegalStateException("this Java has no synthesizer; one with the module java.desktop is needed", e);
        } catch (IOException e) {
            throw new UncheckedIOException("in memory", e);
        }
    }

    static void writeWav(Piece piece, Path file) throws IOException {
        byte[] samples = render(piece);
        AudioFormat format = new AudioFormat(SAMPLE_RATE, 16, 2, true, false);
        try (AudioInputStream in = new AudioInputStream(new ByteArrayInputStream(samples), format, samples.length / FRAME_BYTES)) {
            AudioSystem.write(in, AudioFileFormat.Type.WAVE, file.toFile());
        }
    }
}
