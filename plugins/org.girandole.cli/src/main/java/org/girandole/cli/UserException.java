package org.girandole.cli;

/** Something the user can mend; the message says what and how. */
final class UserException extends RuntimeException {
    private static final long serialVersionUID = 1;

    private final int exitCode;

    UserException(int exitCode, String message) {
        super(message);
        this.exitCode = exitCode;
    }

    int exitCode() {
        return exitCode;
    }
}
