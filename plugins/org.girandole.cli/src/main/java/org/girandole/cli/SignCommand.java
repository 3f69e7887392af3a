package org.girandole.cli;

import java.io.IOException;
import java.io.PrintWriter;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
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

/** Signs a release with a key of the user's. */
@Command(name = "sign", mixinStandardHelpOptions = true, header = "Signs a release with your own OpenPGP key.",
        description = {"", "The release is verified first; what is not whole is not signed. The signature is of release.json, which holds the"
                + " hashes of all other files, and is written beside the folder. The key stays where it is.", ""},
        footer = {"", "Examples:", "  gpg --armor --export-secret-keys you@example.invalid > key.asc",
                "  girandole sign release --key key.asc --passphrase",
                "  girandole verify release --signature release.asc --signer public.asc"})
final class SignCommand implements Callable<Integer> {
    @Spec
    private CommandSpec spec;
    @Parameters(paramLabel = "FOLDER", description = "The folder of a release.")
    private Path folder;
    @Option(names = "--key", required = true, paramLabel = "FILE", description = "Your secret key as exported, armoured or not.")
    private Path key;
    @Option(names = "--passphrase", interactive = true, arity = "0..1", description = "Ask for the key's passphrase.")
    private char[] passphrase;
    @Option(names = "--passphrase-file", paramLabel = "FILE", description = "Read the key's passphrase from the first line of this file.")
    private Path passphraseFile;
    @Option(names = "--into", paramLabel = "FILE", description = "Where the signature is written. Default: FOLDER.asc, beside the folder.")
    private Path into;

    @Override
    public Integer call() {
        Quiet.libraries();
        Verification found = verify();
        if (!found.whole()) {
            throw new UserException(ExitCode.ERRORS_FOUND, "nothing was signed: " + found.faults().get(0) + ".");
        }
        Path release = folder.toAbsolutePath().normalize();
        Path file = into == null ? release.resolveSibling(release.getFileName() + ".asc") : into.toAbsolutePath().normalize();
        if (file.startsWith(release)) {
            throw new UserException(ExitCode.USAGE, "a signature inside of the release would be a foreign file there. Name a file beside it.");
        }
        String signature;
        try {
            signature = DetachedSignature.sign(bytes(release.resolve("release.json"), "release.json"), bytes(key, "key"), phrase());
        } catch (SignatureException e) {
            throw new UserException(ExitCode.USAGE, "nothing was signed: " + e.getMessage() + ".");
        }
        OutputFile.write(file, out -> out.write(signature.getBytes(StandardCharsets.US_ASCII)));
        PrintWriter out = spec.commandLine().getOut();
        out.println("Signed '" + found.label() + "', release " + found.stamp() + ", into " + file + ".");
        out.flush();
        return ExitCode.OK;
    }

    private Verification verify() {
        try {
            return Verifier.verify(folder);
        } catch (ReleaseException e) {
            throw new UserException(ExitCode.USAGE, e.getMessage());
        }
    }

    private char[] phrase() {
        if (passphraseFile != null) {
            return TextFile.read(passphraseFile, "passphrase").lines().findFirst().orElse("").toCharArray();
        }
        return passphrase == null ? new char[0] : passphrase;
    }

    /** Reads a file that need not be text. */
    static byte[] bytes(Path file, String what) {
        if (!Files.isRegularFile(file)) {
            throw new UserException(ExitCode.USAGE, "there is no " + what + " file '" + file + "'.");
        }
        try {
            return Files.readAllBytes(file);
        } catch (IOException e) {
            throw new UserException(ExitCode.USAGE, "the " + what + " file '" + file + "' cannot be read: " + e.getMessage());
        }
    }
}
