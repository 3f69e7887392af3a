package org.girandole.cli;

import java.util.logging.LogManager;

/** Libraries log to the console on their own; what matters to the user is said by the program itself. */
final class Quiet {
    private Quiet() {
    }

    /** Silences java.util.logging; log4j is silenced by the {@code log4j.properties} of this jar. */
    static void libraries() {
        LogManager.getLogManager().reset();
    }
}
