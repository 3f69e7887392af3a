package org.girandole.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.File;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.concurrent.TimeUnit;
import java.util.stream.Stream;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Signatures against GnuPG, a program of other people's for the same standard: each believes what the other signed, and only that. */
class SignCommandTest {
    @TempDir
    private Path temp;
    private Path home;

    @BeforeEach
    void makeKeysForTheTestAlone() throws Exception {
        // Short, for the path of its socket may not be long.
        home = Files.createTempDirectory("gpg");
        gpg("--passphrase", "", "--quick-gen-key", "T. Example <t@example.invalid>", "ed25519", "sign", "never");
        gpg("--passphrase", "long and secret", "--quick-gen-key", "R. Example <r@example.invalid>", "rsa3072", "sign", "never");
        export("t");
        export("r");
        Files.writeString(temp.resolve("phrase.txt"), "long and secret\n");
        Cli.in(temp).run("new", "my-show").exits(0);
        Path show = temp.resolve("my-show/my-show.show");
        Files.writeString(show, Files.readString(show).replace("sheets pdf, html", "sheets html"));
        Cli.in(temp).run("release", "my-show/my-show.show", "--into", "out").exits(0);
    }

    @AfterEach
    void removeTheKeys() throws Exception {
        run("gpgconf", "--homedir", home.toString(), "--kill", "all");
        try (Stream<Path> walk = Files.walk(home)) {
            for (Path path : walk.sorted(Comparator.reverseOrder()).toList()) {
                Files.deleteIfExists(path);
            }
        }
    }

    @Test
    void gnupgBelievesWhatIsSignedHereAndTheOtherWayRound() throws Exception {
        Cli.in(temp).run("sign", "out", "--key", "t-secret.asc").exits(0);
        Cli.in(temp).run("sign", "out", "--key", "r-secret.asc", "--passphrase-file", "phrase.txt", "--into", "r.asc").exits(0);
        assertThat(gpg("--verify", "out.asc", "out/release.json")).contains("Good signature from \"T. Example");
        assertThat(gpg("--verify", "r.asc", "out/release.json")).contains("Good signature from \"R. Example");

        gpg("--local-user", "t@example.invalid", "--armor", "--detach-sign", "-o", "theirs.asc", "out/release.json");
        assertThat(Cli.in(temp).run("verify", "out", "--signature", "theirs.asc", "--signer", "t-public.asc").exits(0).out())
                .contains("signed by T. Example <t@example.invalid>, key ");
        assertThat(Cli.in(temp).run("verify", "out", "--signature", "r.asc", "--signer", "r-public.asc").exits(0).out())
                .contains("signed by R. Example");
    }

    @Test
    void whatWasNotSignedIsNotBelieved() throws Exception {
        Cli.in(temp).run("sign", "out", "--key", "t-secret.asc").exits(0);
        assertThat(Cli.in(temp).run("verify", "out", "--signature", "out.asc", "--signer", "r-public.asc").exits(1).out())
                .contains("wrong: the signature is by another key");
        assertThat(Cli.in(temp).run("sign", "out", "--key", "r-secret.asc").exits(2).err()).contains("another passphrase");
        assertThat(Cli.in(temp).run("sign", "out", "--key", "t-public.asc").exits(2).err()).contains("nothing was signed");
        assertThat(Cli.in(temp).run("sign", "out", "--key", "t-secret.asc", "--into", "out/mine.asc").exits(2).err()).contains("foreign file");
        assertThat(Cli.in(temp).run("verify", "out", "--signature", "out.asc").exits(2).err()).contains("--signer");

        // Written anew from end to end, so that all hashes fit: only the signature tells.
        Path index = temp.resolve("out/release.json");
        Files.writeString(index, Files.readString(index).replace("\"label\": \"", "\"label\": \"Not "));
        assertThat(Cli.in(temp).run("verify", "out").exits(0).out()).contains("whole and unaltered");
        assertThat(Cli.in(temp).run("verify", "out", "--signature", "out.asc", "--signer", "t-public.asc").exits(1).out())
                .contains("wrong: the signature is not one of this release");
        Files.delete(temp.resolve("out/standard.csv"));
        assertThat(Cli.in(temp).run("sign", "out", "--key", "t-secret.asc").exits(1).err()).contains("nothing was signed: 'standard.csv' is missing");
    }

    private void export(String who) throws Exception {
        gpg("--passphrase", who.equals("r") ? "long and secret" : "", "--armor", "-o", who + "-secret.asc", "--export-secret-keys",
                who + "@example.invalid");
        gpg("--armor", "-o", who + "-public.asc", "--export", who + "@example.invalid");
    }

    private String gpg(String... words) throws Exception {
        List<String> command = new ArrayList<>(List.of("gpg", "--homedir", home.toString(), "--batch", "--no-tty", "--pinentry-mode", "loopback"));
        command.addAll(List.of(words));
        return run(command.toArray(String[]::new));
    }

    private String run(String... command) throws Exception {
        File out = Files.createTempFile("gpg", ".out").toFile();
        ProcessBuilder builder = new ProcessBuilder(command).directory(temp.toFile()).redirectErrorStream(true).redirectOutput(out)
                .redirectInput(new File("/dev/null"));
        builder.environment().put("LC_ALL", "C");
        Process process = builder.start();
        assertThat(process.waitFor(1, TimeUnit.MINUTES)).as("%s", String.join(" ", command)).isTrue();
        String text = Files.readString(out.toPath());
        Files.delete(out.toPath());
        assertThat(process.exitValue()).as(text).isZero();
        return text;
    }
}
