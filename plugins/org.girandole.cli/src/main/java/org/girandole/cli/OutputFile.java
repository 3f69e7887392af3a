package org.girandole.cli;

import java.io.IOException;
import java.io.OutputStream;
import java.nio.file.AccessDeniedException;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.nio.file.attribute.PosixFileAttributeView;

/** A file that the user names, written whole or not at all: beside the wanted one, whose place it takes when it is done. */
final class OutputFile {
    private OutputFile() {
    }

    /** What a file is to hold. */
    @FunctionalInterface
    interface Content {
        void writeTo(OutputStream out) throws IOException;
    }

    /** @throws UserException when the file could not be written; what was there before is there still */
    static void write(Path target, Content content) {
        Path file = target.toAbsolutePath().normalize();
        if (Files.isDirectory(file) || file.getParent() == null) {
            throw new UserException(ExitCode.NOT_WRITTEN, "'" + target + "' is a folder. Name a file.");
        }
        try {
            Path unfinished = Files.createTempFile(file.getParent(), "." + file.getFileName() + ".", ".unfinished");
            Thread cleaner = new Thread(() -> delete(unfinished), "unfinished file");
            Runtime.getRuntime().addShutdownHook(cleaner);
            try {
                // Not the temporary file itself: it is for its owner alone, and this one must have the usual rights.
                Files.delete(unfinished);
                try (OutputStream out = Files.newOutputStream(unfinished)) {
                    content.writeTo(out);
                }
                keepRights(file, unfinished);
                Files.move(unfinished, file, StandardCopyOption.ATOMIC_MOVE, StandardCopyOption.REPLACE_EXISTING);
            } finally {
                delete(unfinished);
                Runtime.getRuntime().removeShutdownHook(cleaner);
            }
        } catch (NoSuchFileException e) {
            throw new UserException(ExitCode.NOT_WRITTEN, "'" + target + "' could not be written: there is no folder '" + file.getParent()
                    + "'. Make it first.");
        } catch (AccessDeniedException e) {
            throw new UserException(ExitCode.NOT_WRITTEN, "'" + target + "' could not be written: the folder may not be written to. Name a file"
                    + " in a folder that is yours.");
        } catch (IOException e) {
            throw new UserException(ExitCode.NOT_WRITTEN, "'" + target + "' could not be written: " + e.getMessage()
                    + ". What was there before is unchanged.");
        }
    }

    private static void keepRights(Path before, Path after) throws IOException {
        if (Files.exists(before) && Files.getFileStore(before).supportsFileAttributeView(PosixFileAttributeView.class)) {
            Files.setPosixFilePermissions(after, Files.getPosixFilePermissions(before));
        }
    }

    private static void delete(Path file) {
        try {
            Files.deleteIfExists(file);
        } catch (IOException e) {
            // It stays under its hidden name; the wanted file is whole or untouched.
            return;
        }
    }
}
