package org.girandole.cli;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.charset.CharacterCodingException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;

/** Reads a text file that the user names. */
final class TextFile {
    private static final long MOST_BYTES = 16L * 1024 * 1024;

    private TextFile() {
    }

    /**
     * The text.
     *
     * @param what what it should be, such as {@code script}
     * @throws UserException when there is none, it may not be read, is too large or is not UTF-8
     */
    static String read(Path file, String what) {
        if (!Files.isRegularFile(file)) {
            throw new UserException(ExitCode.USAGE, "there is no file '" + file + "'. Check the name and the folder.");
        }
        try {
            if (Files.size(file) > MOST_BYTES) {
                throw new UserException(ExitCode.USAGE, "'" + file + "' is too large for a " + what + ".");
            }
            return StandardCharsets.UTF_8.newDecoder().decode(ByteBuffer.wrap(Files.readAllBytes(file))).toString();
        } catch (CharacterCodingException e) {
            throw new UserException(ExitCode.USAGE, "'" + file + "' is not UTF-8 text. Save it in UTF-8.");
        } catch (IOException e) {
            throw new UserException(ExitCode.USAGE, "'" + file + "' may not be read. Check its permissions.");
        }
    }
}
