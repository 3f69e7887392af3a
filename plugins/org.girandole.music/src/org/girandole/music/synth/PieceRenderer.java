package org.girandole.music.synth;

import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.OptionalLong;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import javax.sound.midi.InvalidMidiDataException;
import javax.sound.midi.MidiEvent;
import javax.sound.midi.MidiSystem;
import javax.sound.midi.Sequence;
import javax.sound.midi.ShortMessage;
import javax.sound.midi.Track;
import javax.sound.sampled.AudioFileFormat;
import javax.sound.sampled.AudioFormat;
import javax.sound.sampled.AudioInputStream;
import javax.sound.sampled.AudioSystem;
import javax.sound.sampled.UnsupportedAudioFileException;
import org.girandole.music.Rational;
import org.girandole.music.audio.AudioException;
import org.girandole.music.audio.AudioFiles;

/**
 * Renders a piece with the software synthesizer of the Java platform, which reads Standard MIDI Files as if they were sound:
 * 44.1 kHz, stereo, 16 bits. For one user of one machine the samples are always the same. Others have other instruments:
 * the platform takes a sound bank it finds installed, and where there is none it makes a small one of its own, with noise that is drawn at
 * random once and kept in the user's home. Every note has its time everywhere.
 */
public final class PieceRenderer {
    public static final int SAMPLE_RATE = 44_100;

    private static final int FRAME_BYTES = 4;
    private static final long RING_US = 2_000_000;
    private static final long LONGEST_US = 3_600_000_000L;
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
            return render(midi.toByteArray(), piece.map().timeUsOfBar(piece.bars() + 1, Rational.ONE) + RING_US);
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
        byte[] samples = render(midi, endUs(midi));
        write(samples, wav);
        return AudioFiles.lengthUs(samples.length / FRAME_BYTES, SAMPLE_RATE);
    }

    private static long endUs(byte[] midi) throws IOException {
        Sequence sequence;
        try {
            sequence = MidiSystem.getSequence(new ByteArrayInputStream(midi));
        } catch (InvalidMidiDataException | IOException | RuntimeException e) {
            // The platform's reader lets a damaged file end in whatever happens first.
            throw new AudioException(AudioException.Kind.NOT_AUDIO, "It is no Standard MIDI File, or a damaged one", e);
        }
        if (sequence.getDivisionType() != Sequence.PPQ) {
            throw new AudioException(AudioException.Kind.UNSUPPORTED, "It counts its time in frames; only files that count in beats are played");
        }
        OptionalLong lastNote = Arrays.stream(sequence.getTracks()).flatMap(PieceRenderer::events)
                .filter(event -> event.getMessage() instanceof ShortMessage m && m.getCommand() <= ShortMessage.NOTE_ON)
                .mapToLong(MidiEvent::getTick).max();
        if (lastNote.isEmpty()) {
            throw new AudioException(AudioException.Kind.EMPTY, "It has no note");
        }
        boolean ringing = sequence.getTickLength() - lastNote.getAsLong() < sequence.getResolution();
        long endUs = sequence.getMicrosecondLength() + (ringing ? RING_US : 0);
        if (endUs > LONGEST_US) {
            throw new AudioException(AudioException.Kind.UNSUPPORTED, "It lasts " + endUs / 60_000_000 + " minutes; at most an hour is played");
        }
        return endUs;
    }

    private static Stream<MidiEvent> events(Track track) {
        return IntStream.range(0, track.size()).mapToObj(track::get);
    }

    private static byte[] render(byte[] midi, long endUs) throws IOException {
        try (AudioInputStream in = AudioSystem.getAudioInputStream(new ByteArrayInputStream(midi))) {
            requireExpected(in.getFormat());
            in.skipNBytes((long) LATENCY_FRAMES * FRAME_BYTES);
            int bytes = (int) (endUs * SAMPLE_RATE / 1_000_000) * FRAME_BYTES;
            return Arrays.copyOf(in.readNBytes(bytes), bytes);
        } catch (UnsupportedAudioFileException e) {
            throw new UnsupportedOperationException("This Java has no synthesizer; one with the module java.desktop is needed", e);
        }
    }

    private static void write(byte[] samples, OutputStream out) throws IOException {
        AudioFormat format = new AudioFormat(SAMPLE_RATE, 16, 2, true, false);
        try (AudioInputStream in = new AudioInputStream(new ByteArrayInputStream(samples), format, samples.length / FRAME_BYTES)) {
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
