package org.girandole.cli;

import java.io.PrintWriter;
import java.nio.file.Path;
import java.util.concurrent.Callable;
import org.girandole.sheets.release.ReleaseException;
import org.girandole.sheets.release.Verification;
import org.girandole.sheets.release.Verifier;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** Proves that a release folder is whole and unaltered. */
@Command(name = "verify", mixinStandardHelpOptions = true, header = "Proves that a release folder is whole and unaltered.",
        description = {"", "Looks at every file: none may be missing, changed or foreign. The stamp must be that of the inputs, and the plan, the"
                + " standard table, the workbook and every page of every sheet must carry it. What is printed at the end is the hash of"
                + " release.json, which holds the hashes of all other files: compare it with one that was written down when the release was"
                + " signed. Without that nobody can tell a folder that was written anew from end to end.", ""},
        footer = {"", "Example:", "  girandole verify release", "",
                "Exit code 0 says that the release is whole, 1 that something is wrong with it, 2 that the folder is no release."})
final class VerifyCommand implements Callable<Integer> {
    @Spec
    private CommandSpec spec;
    @Parameters(paramLabel = "FOLDER", description = "The folder of a release.")
    private Path folder;

    @Override
    public Integer call() {
        Quiet.libraries();
        Verification found = verify();
        PrintWriter out = spec.commandLine().getOut();
        found.faults().forEach(fault -> out.println("wrong: " + fault + "."));
        String release = "'" + found.label() + "', release " + found.stamp() + ", made by version " + found.version();
        out.println(found.whole() ? release + ": whole and unaltered, " + found.files() + " files."
                : release + ": do not load, wire or fire from this folder. Release the show again, or fetch the folder again from whoever made"
                        + " it.");
        out.println("SHA-256 of release.json: " + found.indexSha256());
        out.flush();
        return found.whole() ? ExitCode.OK : ExitCode.ERRORS_FOUND;
    }

    private Verification verify() {
        try {
            return Verifier.verify(folder);
        } catch (ReleaseException e) {
            throw new UserException(ExitCode.USAGE, e.getMessage());
        }
    }
}
