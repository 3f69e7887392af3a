package org.girandole.music.synth;

import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import javax.sound.sampled.AudioFileFormat;
import javax.sound.sampled.AudioFormat;
import javax.sound.sampled.AudioInputStream;
import javax.sound.sampled.AudioSystem;
import javax.sound.sampled.UnsupportedAudioFileException;
import org.girandole.music.Rational;

/**
 * Renders a piece with the software synthesizer of the Java platform, which reads Standard MIDI Files as if they were sound:
 * 44.1 kHz, stereo, 16 bits. One machine always gives the same samples. Another may have other instruments: the platform
 * takes a sound bank it finds installed, and makes a small one of its own where there is none.
 */
public final class PieceRenderer {
    public static final int SAMPLE_RATE = 44_100;

    private static final int FRAME_BYTES = 4;
    /**
     * The synthesizer works two buffers behind its clock. Measured with strokes at 60 odd times on OpenJDK 17: every one
     * begins 600 samples (and the 3 its attack takes to be heard) late. They are cut off, so that the notes keep their time.
     */
    private static final int LATENCY_FRAMES = 600;

    private PieceRenderer() {
    }

    /** The samples as little-endian signed 16-bit stereo, exactly as long as the piece and its last sounds: 2 s after its end. */
    public static byte[] render(Piece piece) {
        ByteArrayOutputStream midi = new ByteArrayOutputStream();
        try {
            piece.writeMidi(midi);
            try (AudioInputStream in = AudioSystem.getAudioInputStream(new ByteArrayInputStream(midi.toByteArray()))) {
                requireExpected(in.getFormat());
                in.skipNBytes((long) LATENCY_FRAMES * FRAME_BYTES);
                long endUs = piece.map().timeUsOfBar(piece.bars() + 1, Rational.ONE) + 2_000_000;
                int bytes = (int) (endUs * SAMPLE_RATE / 1_000_000) * FRAME_BYTES;
                return Arrays.copyOf(in.readNBytes(bytes), bytes);
            }
        } catch (UnsupportedAudioFileException e) {
            throw new UnsupportedOperationException("This Java has no synthesizer; one with the module java.desktop is needed", e);
        } catch (IOException e) {
            throw new UncheckedIOException("in memory", e);
        }
    }

    /** Renders into a WAV file. */
    public static void writeWav(Piece piece, Path file) throws IOException {
        byte[] samples = render(piece);
        AudioFormat format = new AudioFormat(SAMPLE_RATE, 16, 2, true, false);
        try (AudioInputStream in = new AudioInputStream(new ByteArrayInputStream(samples), format, samples.length / FRAME_BYTES);
                var out = Files.newOutputStream(file)) {
            AudioSystem.write(in, AudioFileFormat.Type.WAVE, out);
        }
    }

    private static void requireExpected(AudioFormat format) {
        if (format.getSampleRate() != SAMPLE_RATE || format.getFrameSize() != FRAME_BYTES || format.isBigEndian()) {
            throw new UnsupportedOperationException("The synthesizer of this Java renders " + format
                    + "; 44.1 kHz, 16-bit, stereo was expected");
        }
    }
}
