package org.girandole.music.analysis;

import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;
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
        KeptFile.write(kept, peaks::write);
        return peaks;
    }

    private static Peaks read(Path audio) throws IOException {
        try (AudioSource source = AudioFiles.open(audio)) {
            Peaks.Builder builder = new Peaks.Builder(source.sampleRate());
            SampleSink.play(source, List.of(builder));
            return builder.peaks();
        }
    }
}
