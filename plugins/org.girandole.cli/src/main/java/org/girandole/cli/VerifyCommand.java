package org.girandole.cli;

import java.io.IOException;
import java.io.PrintWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.concurrent.Callable;
import org.girandole.sheets.release.ReleaseVerifier;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** Proves that a release folder is whole and unaltered. */
@Command(name = "verify", mixinStandardHelpOptions = true, header = "Proves that a release folder is whole and unaltered.",
        description = {"", "Compares every file with what release.json says of it, the stamp with the inputs that it was made from, and the"
                + " stamp on plan and sheets with that. It cannot tell a folder that somebody wrote anew from end to end: read the stamp"
                + " out to somebody who has the sheets.", ""},
        footer = {"", "Example:", "  girandole verify release", "", "Exit code 1 says that something is changed, missing or foreign."})
final class VerifyCommand implements Callable<Integer> {
    @Spec
    private CommandSpec spec;
    @Parameters(paramLabel = "FOLDER", description = "A release folder.")
    private Path folder;

    @Override
    public Integer call() {
        if (!Files.isDirectory(folder)) {
            throw new UserException(ExitCode.USAGE, "there is no folder '" + folder + "'. Name a release folder.");
        }
        PrintWriter out = spec.commandLine().getOut();
        try {
            ReleaseVerifier.Verification found = ReleaseVerifier.verify(folder);
            found.troubles().forEach(out::println);
            out.println(found.troubles().isEmpty()
                    ? "Whole and unaltered: " + found.files() + " files of release " + found.stamp() + "."
                    : "Do not use this folder: " + found.troubles().size() + (found.troubles().size() == 1 ? " trouble." : " troubles."));
            out.flush();
            return found.troubles().isEmpty() ? ExitCode.OK : ExitCode.ERRORS_FOUND;
        } catch (IOException e) {
            throw new UserException(ExitCode.USAGE, "'" + folder + "' cannot be read: " + e.getMessage());
        }
    }
}
