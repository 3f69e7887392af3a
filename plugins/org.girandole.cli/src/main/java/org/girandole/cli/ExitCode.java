package org.girandole.cli;

/** What the program tells its caller. The numbers are documented and do not change. */
final class ExitCode {
    /** Done, and nothing grave was found. */
    static final int OK = 0;
    /** The scripts were read and have errors that nobody has agreed to. */
    static final int ERRORS_FOUND = 1;
    /** The command line is wrong, or a script cannot be read. */
    static final int USAGE = 2;
    /** The output could not be written. */
    static final int NOT_WRITTEN = 3;
    /** A mistake of the program itself (sysexits: EX_SOFTWARE). */
    static final int INTERNAL = 70;

    private ExitCode() {
    }
}
