package org.girandole.sheets.release;

/** A release that was not made. The message is for the user; what stood in the folder before stands there still. */
public final class ReleaseException extends Exception {
    private static final long serialVersionUID = 1;

    private final Reason reason;

    public ReleaseException(Reason reason, String message) {
        super(message);
        this.reason = reason;
    }

    public ReleaseException(Reason reason, String message, Throwable cause) {
        super(message, cause);
        this.reason = reason;
    }

    public Reason reason() {
        return reason;
    }

    /** Why there is no release. */
    public enum Reason {
        /** The show has errors that nobody has agreed to. */
        NOT_CLEAN,
        /** The script asks for something that cannot be made. */
        SCRIPT,
        /** The folder cannot be used, or the disk did not take the files. */
        FOLDER
    }
}
