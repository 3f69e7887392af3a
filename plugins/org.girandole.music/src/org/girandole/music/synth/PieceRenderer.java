package org.girandole.music.synth;

import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.function.DoublePredicate;
import javax.sound.sampled.AudioFileFormat;
import javax.sound.sampled.AudioFormat;
import javax.sound.sampled.AudioInputStream;
import javax.sound.sampled.AudioSystem;
import org.girandole.music.Rational;
import org.girandole.music.audio.AudioException;
import org.girandole.music.audio.AudioFiles;

/**
 * Renders a piece into sound: 44.1 kHz, stereo, 16 bits. The instruments are plain and the program's own: the synthesizer of the Java platform
 * plays with whatever instruments a machine has, or with some whose noise it draws at random once for each user, so that no two machines
 * would hear the same recording. Here the same piece gives the same samples everywhere.
 */
public final class PieceRenderer {
    public static final int SAMPLE_RATE = 44_100;

    static final int FRAME_BYTES = 4;
    private static final long RING_US = 2_000_000;
    private static final long LONGEST_US = 3_600_000_000L;

    private PieceRenderer() {
    }

    /** The samples as little-endian signed 16-bit stereo, exactly as long as the piece and its last sounds: 2 s after its end. */
    public static byte[] render(Piece piece) {
        ByteArrayOutputStream midi = new ByteArrayOutputStream();
        try {
            piece.writeMidi(midi);
            return render(Performance.read(midi.toByteArray()), piece.map().timeUsOfBar(piece.bars() + 1, Rational.ONE) + RING_US, share -> true);
        } catch (IOException e) {
            throw new UncheckedIOException("in memory", e);
        }
    }

    /** Renders into a WAV file. */
    public static void writeWav(Piece piece, Path file) throws IOException {
        byte[] samples = render(piece);
        try (OutputStream out = Files.newOutputStream(file)) {
            write(samples, out);
        }
    }

    /**
     * Renders a Standard MIDI File into a WAV file: up to the end that the file tells, and 2 s longer where a note sounds up to
     * that end.
     *
     * @return length of the sound in microseconds
     * @throws AudioException if it is no MIDI file, counts its time in frames, lasts longer than an hour, or has no note
     * @throws IOException    if the sound cannot be written
     */
    public static long writeWav(byte[] midi, OutputStream wav) throws IOException {
        return writeWav(midi, wav, share -> true);
    }

    /**
     * The same, for somebody who waits for it.
     *
     * @param goesOn is told again and again which share is played, 0 to 1; false stops it before anything is written
     * @throws java.util.concurrent.CancellationException when it was stopped
     */
    public static long writeWav(byte[] midi, OutputStream wav, DoublePredicate goesOn) throws IOException {
        Performance performance = Performance.read(midi);
        long endUs = performance.endUs() + (performance.rings() ? RING_US : 0);
        if (endUs > LONGEST_US) {
            throw new AudioException(AudioException.Kind.UNSUPPORTED, "It lasts " + endUs / 60_000_000 + " minutes; at most an hour is played");
        }
        byte[] samples = render(performance, endUs, goesOn);
        write(samples, wav);
        return AudioFiles.lengthUs(samples.length / FRAME_BYTES, SAMPLE_RATE);
    }

    private static byte[] render(Performance performance, long endUs, DoublePredicate goesOn) {
        return new Band(performance).play((int) (endUs * SAMPLE_RATE / 1_000_000), goesOn);
    }

    private static void write(byte[] samples, OutputStream out) throws IOException {
        AudioFormat format = new AudioFormat(SAMPLE_RATE, 16, 2, true, false);
        try (AudioInputStream in = new AudioInputStream(new ByteArrayInputStream(samples), format, samples.length / FRAME_BYTES)) {
            AudioSystem.write(in, AudioFileFormat.Type.WAVE, out);
        }
    }
}
