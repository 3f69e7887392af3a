package org.girandole.cli;

import java.io.FileDescriptor;
import java.io.FileOutputStream;
import java.io.OutputStreamWriter;
import java.io.PrintWriter;
import java.nio.charset.StandardCharsets;
import java.util.List;
import picocli.CommandLine;

/** Entry point of the command line. */
public final class Main {
    private Main() {
    }

    /** Runs one command and ends the process with its exit code. */
    public static void main(String[] args) {
        // Drawings are laid out without a screen, also where one is configured and cannot be reached.
        System.setProperty("java.awt.headless", "true");
        PrintWriter out = utf8(FileDescriptor.out);
        PrintWriter err = utf8(FileDescriptor.err);
        int code = run(args, out, err);
        out.flush();
        err.flush();
        System.exit(code);
    }

    /** Runs one command and gives its exit code; never throws. */
    static int run(String[] args, PrintWriter out, PrintWriter err) {
        try {
            CommandLine line = Girandole.commandLine();
            line.setOut(out);
            line.setErr(err);
            line.setExecutionExceptionHandler((failure, command, parsed) -> {
                if (failure instanceof UserException mistake) {
                    err.println("girandole: " + mistake.getMessage());
                    return mistake.exitCode();
                }
                return InternalErrors.report(failure, List.of(args), err);
            });
            return line.execute(args);
        } catch (Throwable failure) {
            // The last place where anything can be caught: a user never sees a stack trace.
            return InternalErrors.report(failure, List.of(args), err);
        }
    }

    /** Output is UTF-8 whatever the locale says, so that a pipe gets the same bytes everywhere. */
    private static PrintWriter utf8(FileDescriptor descriptor) {
        return new PrintWriter(new OutputStreamWriter(new FileOutputStream(descriptor), StandardCharsets.UTF_8), false);
    }
}
