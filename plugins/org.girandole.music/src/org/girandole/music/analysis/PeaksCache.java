package org.girandole.music.analysis;

import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.nio.file.AtomicMoveNotSupportedException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.util.List;
import org.girandole.music.audio.AudioFiles;
import org.girandole.music.audio.AudioSource;

/** Keeps the peaks of sound files in a folder, by the hash of the sound: a file that changed is read again. */
public final class PeaksCache {
    private final Path folder;

    /** @param folder is made when first needed */
    public PeaksCache(Path folder) {
        this.folder = folder;
    }

    /**
     * Peaks of a sound file, from the cache or by reading it. A cache that cannot be written or read is done without.
     *
     * @throws IOException if the sound cannot be read
     */
    public Peaks peaks(Path audio) throws IOException {
        Path kept = folder.resolve(AudioFiles.sha256(audio) + ".peaks");
        if (Files.isReadable(kept)) {
            try (InputStream in = Files.newInputStream(kept)) {
                return Peaks.read(in);
            } catch (IOException e) {
                // A damaged file is written anew below.
                Files.deleteIfExists(kept);
            }
        }
        Peaks peaks = read(audio);
        keep(peaks, kept);
        return peaks;
    }

    private static Peaks read(Path audio) throws IOException {
        try (AudioSource source = AudioFiles.open(audio)) {
            Peaks.Builder builder = new Peaks.Builder(source.sampleRate());
            SampleSink.play(source, List.of(builder));
            return builder.peaks();
        }
    }

    private void keep(Peaks peaks, Path kept) {
        try {
            Files.createDirectories(folder);
            Path part = Files.createTempFile(folder, "peaks", ".part");
            try (OutputStream out = Files.newOutputStream(part)) {
                peaks.write(out);
            }
            try {
                Files.move(part, kept, StandardCopyOption.ATOMIC_MOVE, StandardCopyOption.REPLACE_EXISTING);
            } catch (AtomicMoveNotSupportedException e) {
                Files.move(part, kept, StandardCopyOption.REPLACE_EXISTING);
            }
        } catch (IOException e) {
            // Without a cache the next drawing reads the sound again; nothing is lost but time.
            return;
        }
    }
}
