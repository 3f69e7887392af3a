package org.girandole.lang.files;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.BasicFileAttributes;
import java.nio.file.attribute.FileTime;
import java.util.Map;
import java.util.Objects;
import org.girandole.plan.Lately;

/**
 * Recordings that are not read again as long as the file system says that the file is the same: same file, same size, same time of change.
 * For a program that checks at each key press. May be used by any number of threads.
 */
public final class RememberedRecordings implements Recordings {
    private static final int MOST_KEPT = 64;

    private final Recordings recordings;
    private final Map<Path, Kept> kept = new Lately<>(MOST_KEPT);

    /** @param recordings where to listen to what is not remembered */
    public RememberedRecordings(Recordings recordings) {
        this.recordings = recordings;
    }

    @Override
    public Listening listening(Path audio) throws IOException {
        Stamp stamp = Stamp.of(audio);
        synchronized (kept) {
            Kept known = kept.get(audio);
            if (known != null && known.stamp.equals(stamp)) {
                return known.listening;
            }
        }
        Listening listening = recordings.listening(audio);
        // What changes while it is read belongs to no stamp.
        if (stamp.equals(Stamp.of(audio))) {
            synchronized (kept) {
                kept.put(audio, new Kept(stamp, listening));
            }
        }
        return listening;
    }

    private record Kept(Stamp stamp, Listening listening) {
    }

    private record Stamp(Object file, long bytes, FileTime changed) {
        static Stamp of(Path audio) throws IOException {
            BasicFileAttributes attributes = Files.readAttributes(audio, BasicFileAttributes.class);
            return new Stamp(Objects.requireNonNullElse(attributes.fileKey(), ""), attributes.size(), attributes.lastModifiedTime());
        }
    }
}
