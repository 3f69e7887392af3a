package org.girandole.plan.account;

/** A log that cannot be used; the message names the line, what was found and what was expected. */
public final class LogException extends Exception {
    private static final long serialVersionUID = 1;

    LogException(long line, String found, String expected) {
        super("line " + line + ": found " + (found.isEmpty() ? "nothing" : "'" + found + "'") + ", expected " + expected);
    }

    LogException(String message) {
        super(message);
    }
}
