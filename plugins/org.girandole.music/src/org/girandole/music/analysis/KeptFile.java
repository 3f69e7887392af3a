package org.girandole.music.analysis;

import java.io.IOException;
import java.io.OutputStream;
import java.nio.file.AtomicMoveNotSupportedException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;

/** A file of a cache, written whole or not at all. */
final class KeptFile {
    private KeptFile() {
    }

    /** What a file is to hold. */
    @FunctionalInterface
    interface Content {
        void writeTo(OutputStream out) throws IOException;
    }

    /** Writes the file if that can be done; a cache that cannot be written is done without. */
    static void write(Path file, Content content) {
        try {
            Files.createDirectories(file.getParent());
            Path part = Files.createTempFile(file.getParent(), "sound", ".part");
            try {
                try (OutputStream out = Files.newOutputStream(part)) {
                    content.writeTo(out);
                }
                try {
                    Files.move(part, file, StandardCopyOption.ATOMIC_MOVE, StandardCopyOption.REPLACE_EXISTING);
                } catch (AtomicMoveNotSupportedException e) {
                    Files.move(part, file, StandardCopyOption.REPLACE_EXISTING);
                }
            } finally {
                Files.deleteIfExists(part);
            }
        } catch (IOException e) {
            // Without a cache the sound is read again the next time; nothing is lost but time.
            return;
        }
    }
}
