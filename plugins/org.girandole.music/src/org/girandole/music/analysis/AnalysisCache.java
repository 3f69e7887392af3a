package org.girandole.music.analysis;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import java.util.Locale;
import java.util.Optional;
import org.girandole.music.audio.AudioFiles;

/**
 * Keeps what was heard in sound files, in a folder, by the hash of the sound: a track is listened to once, and again when it
 * changes. What comes from the cache is what listening would give.
 */
public final class AnalysisCache {
    private final Path folder;

    /** @param folder is made when first needed */
    public AnalysisCache(Path folder) {
        this.folder = folder;
    }

    /**
     * The cache of this user: the folder that the system property {@code girandole.cache} or the environment variable
     * {@code GIRANDOLE_CACHE} names, else the usual place of the platform.
     */
    public static AnalysisCache usual() {
        return new AnalysisCache(usualFolder());
    }

    /** The folder of {@link #usual}, which is also a good one for a {@link PeaksCache}. */
    public static Path usualFolder() {
        String home = System.getProperty("user.home", "");
        String os = System.getProperty("os.name", "").toLowerCase(Locale.ROOT);
        return named(System.getProperty("girandole.cache")).or(() -> named(System.getenv("GIRANDOLE_CACHE")))
                .or(() -> os.startsWith("windows") ? named(System.getenv("LOCALAPPDATA")).map(f -> f.resolve("girandole").resolve("cache"))
                        : Optional.empty())
                .or(() -> os.startsWith("mac") ? named(home).map(f -> f.resolve("Library/Caches/girandole")) : Optional.empty())
                .or(() -> named(System.getenv("XDG_CACHE_HOME")).map(f -> f.resolve("girandole")))
                .orElseGet(() -> Path.of(home, ".cache", "girandole"));
    }

    private static Optional<Path> named(String folder) {
        try {
            return folder == null || folder.isBlank() ? Optional.empty() : Optional.of(Path.of(folder)).filter(Path::isAbsolute);
        } catch (InvalidPathException e) {
            return Optional.empty();
        }
    }

    /**
     * What is heard in a sound file, from the cache or by listening. A cache that cannot be read or written is done without.
     *
     * @throws IOException as {@link TrackAnalyser#analyse}
     */
    public TrackAnalysis analysis(Path audio) throws IOException {
        Optional<TrackAnalysis> kept = kept(audio);
        if (kept.isPresent()) {
            return kept.get();
        }
        TrackAnalysis track = TrackAnalyser.analyse(audio);
        KeptFile.write(file(track.facts().sha256()), out -> AnalysisFile.write(track, out));
        return track;
    }

    /**
     * What the cache has on a sound file; empty if it was not listened to yet.
     *
     * @throws IOException if the sound cannot be read at all
     */
    public Optional<TrackAnalysis> kept(Path audio) throws IOException {
        String hash = AudioFiles.sha256(audio);
        Path file = file(hash);
        if (!Files.isReadable(file)) {
            return Optional.empty();
        }
        try {
            TrackAnalysis track = AnalysisFile.read(Files.readAllBytes(file));
            return Optional.of(track).filter(t -> t.facts().sha256().equals(hash));
        } catch (IOException e) {
            // Of another version, or damaged: it is written anew.
            return Optional.empty();
        }
    }

    private Path file(String hash) {
        return folder.resolve(hash + ".heard");
    }
}
