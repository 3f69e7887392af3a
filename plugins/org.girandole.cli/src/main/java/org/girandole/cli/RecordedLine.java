package org.girandole.cli;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.girandole.timecode.reader.LineReader;
import org.girandole.timecode.reader.LineReport;

/** A recording that the user names. */
final class RecordedLine {
    private RecordedLine() {
    }

    /** @throws UserException when it is no file, or cannot be read */
    static LineReport read(Path recording) {
        if (!Files.isRegularFile(recording)) {
            throw new UserException(ExitCode.USAGE, (Files.exists(recording) ? "'" + recording + "' is not a file. " : "there is no file '"
                    + recording + "'. ") + "Name a recording, such as line.wav.");
        }
        try {
            return LineReader.read(recording, (done, of) -> {
            });
        } catch (IOException e) {
            throw new UserException(ExitCode.USAGE, "'" + recording + "' cannot be read: " + e.getMessage());
        }
    }
}
