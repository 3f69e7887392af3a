package org.girandole.plan.allocate;

/** A lock file that cannot be used. The message says which line, what is wrong with it, and how to mend it; it is meant for the user. */
public final class LockException extends Exception {
    private static final long serialVersionUID = 1L;

    LockException(String message) {
        super(message);
    }

    LockException(int line, String found, String cure) {
        super("line " + line + ": " + found + "; " + cure);
    }
}
