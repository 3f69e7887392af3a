package org.girandole.plan.meter;

/** A list of readings that cannot be understood. The message says which line, what was found, and what was expected. */
public final class ReadingsException extends Exception {
    private static final long serialVersionUID = 1L;

    ReadingsException(long line, String found, String expected) {
        super("line " + line + ": found '" + (found.length() <= 60 ? found : found.substring(0, 60) + "...") + "', expected " + expected);
    }
}
