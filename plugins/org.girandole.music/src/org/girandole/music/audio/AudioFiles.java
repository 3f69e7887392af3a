package org.girandole.music.audio;

import java.io.BufferedInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.Arrays;
import java.util.HexFormat;

/** Opens sound files of every format known here. */
public final class AudioFiles {
    private static final int BUFFER = 1 << 16;

    private AudioFiles() {
    }

    /**
     * Opens a file for reading from its start.
     *
     * @throws AudioException if it is not sound, or not sound that is read here
     * @throws IOException    if the file cannot be read at all
     */
    public static AudioSource open(Path file) throws IOException {
        long size = Files.size(file);
        InputStream in = new BufferedInputStream(Files.newInputStream(file), BUFFER);
        try {
            return checked(choose(file, in, size));
        } catch (IOException | RuntimeException e) {
            in.close();
            throw e;
        }
    }

    /**
     * Length, rate, channels and hash. WAV, AIFF and FLAC say their length up front; it is compared with what the file
     * holds. Ogg Vorbis and MP3 are decoded to the end and counted.
     *
     * @throws AudioException if it is not sound, or has no sample
     * @throws IOException    if the file cannot be read at all
     */
    public static AudioFacts facts(Path file) throws IOException {
        String hash = sha256(file);
        try (AudioSource source = open(file)) {
            long frames = source.frames() >= 0 ? source.frames() : count(source);
            if (frames == 0) {
                throw new AudioException(AudioException.Kind.EMPTY, "The file (" + source.format() + ") holds no sound at all");
            }
            return new AudioFacts(source.format(), source.sampleRate(), source.channels(), frames,
                    lengthUs(frames, source.sampleRate()), hash, source.remarks());
        }
    }

    /** {@code frames / sampleRate} in microseconds, rounded half up. */
    public static long lengthUs(long frames, int sampleRate) {
        long seconds = frames / sampleRate;
        long rest = frames % sampleRate;
        return seconds * 1_000_000 + (2 * rest * 1_000_000 + sampleRate) / (2L * sampleRate);
    }

    /** SHA-256 of the bytes of a file, in lower-case hexadecimal. */
    public static String sha256(Path file) throws IOException {
        MessageDigest digest;
        try {
            digest = MessageDigest.getInstance("SHA-256");
        } catch (NoSuchAlgorithmException e) {
            throw new IllegalStateException("every Java platform must have SHA-256", e);
        }
        try (InputStream in = Files.newInputStream(file)) {
            byte[] block = new byte[BUFFER];
            for (int n = in.read(block); n >= 0; n = in.read(block)) {
                digest.update(block, 0, n);
            }
        }
        return HexFormat.of().formatHex(digest.digest());
    }

    private static long count(AudioSource source) throws IOException {
        float[][] block = new float[source.channels()][8192];
        long frames = 0;
        for (int n = source.read(block, 0, 8192); n >= 0; n = source.read(block, 0, 8192)) {
            frames += n;
        }
        return frames;
    }

    private static AudioSource choose(Path file, InputStream in, long size) throws IOException {
        byte[] head = new byte[12];
        in.mark(head.length);
        int got = in.readNBytes(head, 0, head.length);
        in.reset();
        if (got == 0) {
            throw new AudioException(AudioException.Kind.EMPTY, "The file is empty");
        }
        String first = new String(head, 0, 4, StandardCharsets.ISO_8859_1);
        String form = new String(head, 8, 4, StandardCharsets.ISO_8859_1);
        if ((first.equals("RIFF") || first.equals("RF64")) && form.equals("WAVE")) {
            return WavReader.open(in, size);
        }
        if (first.equals("FORM") && (form.equals("AIFF") || form.equals("AIFC"))) {
            return AiffReader.open(in, size);
        }
        if (first.equals("fLaC")) {
            return FlacReader.open(in);
        }
        if (first.equals("OggS")) {
            return VorbisReader.open(in);
        }
        if (first.startsWith("ID3") || Mp3Header.isSync(head)) {
            return Mp3Reader.open(file, in);
        }
        throw new AudioException(AudioException.Kind.NOT_AUDIO, "The file is not sound in a form read here: it begins with "
                + visible(Arrays.copyOf(head, Math.min(got, 4)))
                + "; WAV, AIFF, FLAC, Ogg Vorbis and MP3 are read");
    }

    private static String visible(byte[] bytes) {
        return "bytes " + HexFormat.ofDelimiter(" ").formatHex(bytes);
    }

    private static AudioSource checked(AudioSource source) throws IOException {
        if (source.sampleRate() < 1000 || source.sampleRate() > 768_000) {
            source.close();
            throw new AudioException(AudioException.Kind.DAMAGED, "The file (" + source.format() + ") claims "
                    + source.sampleRate() + " samples a second; 1000 to 768000 are possible");
        }
        if (source.channels() < 1 || source.channels() > 32) {
            source.close();
            throw new AudioException(AudioException.Kind.DAMAGED, "The file (" + source.format() + ") claims "
                    + source.channels() + " channels; 1 to 32 are possible");
        }
        return source;
    }
}
