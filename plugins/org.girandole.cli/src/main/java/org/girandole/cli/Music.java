package org.girandole.cli;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.girandole.music.analysis.AnalysisCache;
import org.girandole.music.analysis.TrackAnalysis;
import org.girandole.music.audio.AudioException;

/** Sound files that the user names. */
final class Music {
    private Music() {
    }

    /** @throws UserException when there is no such file, or it is no sound that could be read */
    static TrackAnalysis hear(Path audio) {
        requireFile(audio);
        try {
            return AnalysisCache.usual().analysis(audio);
        } catch (AudioException e) {
            throw refused(audio, e);
        } catch (IOException e) {
            throw new UserException(ExitCode.USAGE, "'" + audio + "' may not be read. Check its permissions.");
        }
    }

    static UserException refused(Path audio, AudioException e) {
        return new UserException(ExitCode.USAGE, "'" + audio + "' cannot be listened to. " + e.getMessage() + ".");
    }

    static void requireFile(Path audio) {
        if (!Files.isRegularFile(audio)) {
            throw new UserException(ExitCode.USAGE, Files.exists(audio) ? "'" + audio + "' is not a file. Name a recording, such as tides.wav."
                    : "there is no file '" + audio + "'. Check the name and the folder.");
        }
    }
}
