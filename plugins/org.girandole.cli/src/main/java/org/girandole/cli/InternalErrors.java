package org.girandole.cli;

import java.io.IOException;
import java.io.PrintWriter;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;

/** What happens when the program itself is wrong: one line for the user, the rest into a file that can be sent along. */
final class InternalErrors {
    private InternalErrors() {
    }

    /** Tells it and gives the exit code. */
    static int report(Throwable failure, List<String> args, PrintWriter err) {
        if (failure instanceof OutOfMemoryError) {
            err.println("girandole: not enough memory for this show. Give more, for example: java -Xmx4g -jar girandole.jar "
                    + String.join(" ", args));
        } else {
            err.println("girandole: internal error, this is a mistake of the program and not of your show. " + log(failure, args));
        }
        err.flush();
        return ExitCode.INTERNAL;
    }

    private static String log(Throwable failure, List<String> args) {
        try {
            Path file = Files.createTempFile("girandole-", ".log");
            try (PrintWriter out = new PrintWriter(Files.newBufferedWriter(file, StandardCharsets.UTF_8))) {
                out.println("girandole " + Version.tool() + ", Java " + System.getProperty("java.version"));
                out.println("arguments: " + args);
                failure.printStackTrace(out);
            }
            return "Details: " + file;
        } catch (IOException e) {
            return "The details could not be written to a file: " + failure;
        }
    }
}
