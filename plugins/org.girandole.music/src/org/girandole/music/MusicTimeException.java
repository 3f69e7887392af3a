package org.girandole.music;

/** A tempo map, a meter, a bar, or a beat that makes no sense. The message says what was found and what would do. */
public final class MusicTimeException extends IllegalArgumentException {
    private static final long serialVersionUID = 1L;

    /** @param message one sentence for the user */
    public MusicTimeException(String message) {
        super(message);
    }
}
