package org.girandole.cli;

import java.io.PrintWriter;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.Callable;
import org.girandole.cli.DetachedSignature.SignatureException;
import org.girandole.sheets.release.ReleaseException;
import org.girandole.sheets.release.Verification;
import org.girandole.sheets.release.Verifier;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** Proves that a release folder is whole and unaltered. */
@Command(name = "verify", mixinStandardHelpOptions = true, header = "Proves that a release folder is whole and unaltered.",
        description = {"", "Looks at every file: none may be missing, changed or foreign. The stamp must be that of the inputs, and the plan, the"
                + " standard table, the workbook and every page of every sheet must carry it. What is printed at the end is the hash of"
                + " release.json, which holds the hashes of all other files: compare it with one that was written down when the release was"
                + " signed. Without that nobody can tell a folder that was written anew from end to end.", ""},
        footer = {"", "Examples:", "  girandole verify release",
                "  girandole verify release --signature release.asc --signer public.asc", "",
                "Exit code 0 says that the release is whole, 1 that something is wrong with it, 2 that the folder is no release."})
final class VerifyCommand implements Callable<Integer> {
    @Spec
    private CommandSpec spec;
    @Parameters(paramLabel = "FOLDER", description = "The folder of a release.")
    private Path folder;
    @Option(names = "--signature", paramLabel = "FILE", description = "A detached OpenPGP signature of release.json, such as 'girandole sign' or"
            + " 'gpg --detach-sign' writes.")
    private Path signature;
    @Option(names = "--signer", paramLabel = "FILE", description = "The public key of whoever should have signed, as exported.")
    private Path signer;

    @Override
    public Integer call() {
        Quiet.libraries();
        if ((signature == null) != (signer == null)) {
            throw new UserException(ExitCode.USAGE, "--signature and --signer belong together: a signature says nothing without the key that it"
                    + " should have been made with.");
        }
        Verification found = verify();
        List<String> faults = new ArrayList<>(found.faults());
        Optional<String> signedBy = signedBy(faults);
        PrintWriter out = spec.commandLine().getOut();
        faults.forEach(fault -> out.println("wrong: " + fault + "."));
        String release = "'" + found.label() + "', release " + found.stamp() + ", made by version " + found.version();
        out.println(faults.isEmpty() ? release + ": whole and unaltered, " + found.files() + " files."
                : release + ": do not load, wire or fire from this folder. Release the show again, or fetch the folder again from whoever made"
                        + " it.");
        signedBy.ifPresent(who -> out.println("release.json was signed by " + who + "."));
        out.println("SHA-256 of release.json: " + found.indexSha256());
        out.flush();
        return faults.isEmpty() ? ExitCode.OK : ExitCode.ERRORS_FOUND;
    }

    private Optional<String> signedBy(List<String> faults) {
        if (signature == null) {
            return Optional.empty();
        }
        try {
            return Optional.of(DetachedSignature.signer(SignCommand.bytes(folder.resolve("release.json"), "release.json"),
                    SignCommand.bytes(signature, "signature"), SignCommand.bytes(signer, "key")));
        } catch (SignatureException e) {
            faults.add(e.getMessage());
            return Optional.empty();
        }
    }

    private Verification verify() {
        try {
            return Verifier.verify(folder);
        } catch (ReleaseException e) {
            throw new UserException(ExitCode.USAGE, e.getMessage());
        }
    }
}
