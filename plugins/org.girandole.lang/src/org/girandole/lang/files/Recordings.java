package org.girandole.lang.files;

import java.io.IOException;
import java.nio.file.Path;

/** Where recordings are listened to. */
public interface Recordings {
    /** Each time from disk. */
    Recordings FROM_DISK = Listening::to;

    /**
     * A recording and what is heard in it.
     *
     * @throws IOException when it cannot be read; the message is for the user
     */
    Listening listening(Path audio) throws IOException;
}
