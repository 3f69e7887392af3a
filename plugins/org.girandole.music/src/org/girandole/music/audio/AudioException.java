package org.girandole.music.audio;

import java.io.IOException;

/** A sound file that cannot be read. The message is for the user and does not name the file; {@link #kind} sorts it. */
public final class AudioException extends IOException {
    private static final long serialVersionUID = 1L;

    /** Why. */
    public enum Kind {
        /** The bytes are of no format known here. */
        NOT_AUDIO,
        /** A format known here, in a variant that is not read. */
        UNSUPPORTED,
        /** The bytes contradict their format. */
        DAMAGED,
        /** There is sound in it, but no sample of it. */
        EMPTY
    }

    private final Kind kind;

    public AudioException(Kind kind, String message) {
        super(message);
        this.kind = kind;
    }

    public AudioException(Kind kind, String message, Throwable cause) {
        super(message, cause);
        this.kind = kind;
    }

    public Kind kind() {
        return kind;
    }
}
