package org.girandole.sheets.release;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.MessageDigest;
import java.util.HexFormat;
import java.util.List;
import java.util.Random;
import java.util.function.UnaryOperator;
import java.util.stream.Stream;
import org.girandole.sheets.SmallShow;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Whatever is done to a release folder is found; a folder that nobody touched has no fault. */
class VerifierTest {
    @TempDir
    private Path temp;
    private Path out;

    @BeforeEach
    void release() throws Exception {
        out = temp.resolve("out");
        Releaser.release(new SmallShow().checked(), out, "1.2.3");
    }

    private List<String> faults() throws ReleaseException {
        return Verifier.verify(out).faults();
    }

    @Test
    void anUntouchedReleaseIsWhole() throws Exception {
        Verification verification = Verifier.verify(out);

        assertThat(verification.faults()).isEmpty();
        assertThat(verification.whole()).isTrue();
        assertThat(verification.stamp()).isEqualTo(new SmallShow().plan().stamp().printed());
        assertThat(verification.indexSha256()).isEqualTo(sha256(out.resolve("release.json")));
        try (Stream<Path> files = Files.walk(out)) {
            assertThat(files.filter(Files::isRegularFile)).hasSize(verification.files());
        }
    }

    @Test
    void aByteChangedAnywhereIsFound() throws Exception {
        Random random = new Random(7);
        List<Path> files;
        try (Stream<Path> walk = Files.walk(out)) {
            files = walk.filter(f -> Files.isRegularFile(f) && !f.endsWith("release.json")).sorted().toList();
        }
        for (Path file : files) {
            byte[] before = Files.readAllBytes(file);
            byte[] after = before.clone();
            after[random.nextInt(after.length)] ^= (byte) (1 << random.nextInt(8));
            Files.write(file, after);
            String name = out.relativize(file).toString();
            assertThat(faults()).containsExactly("'" + name + "' was changed after it was released");
            Files.write(file, before);
        }
        assertThat(faults()).isEmpty();
    }

    @Test
    void missingAndForeignFilesAreNamed() throws Exception {
        Files.delete(out.resolve("sheets/01-summary.pdf"));
        Files.writeString(out.resolve("sheets/thesis.txt"), "mine");
        Files.move(out.resolve("plan.json"), temp.resolve("plan.json"));
        Files.createSymbolicLink(out.resolve("plan.json"), temp.resolve("plan.json"));

        assertThat(faults()).containsExactly("'plan.json' is no part of the release", "'sheets/01-summary.pdf' is missing",
                "'sheets/thesis.txt' is no part of the release");
    }

    @Test
    void aFileOfAnotherReleaseIsFoundEvenWhenTheIndexSaysItBelongs() throws Exception {
        Path other = temp.resolve("other");
        Releaser.release(new SmallShow().input("be".repeat(32)).checked(), other, "1.2.3");
        for (String name : List.of("plan.json", "standard.csv", "tables.xlsx", "sheets/03-firing-table.html", "sheets/03-firing-table.pdf",
                "sheets/all-sheets.pdf")) {
            byte[] before = Files.readAllBytes(out.resolve(name));
            String index = Files.readString(out.resolve("release.json"));
            smuggle(name, Files.readAllBytes(other.resolve(name)));
            assertThat(faults()).singleElement().asString().startsWith("'" + name + "' does not belong to this release: ")
                    .contains("carries the stamp ");
            Files.write(out.resolve(name), before);
            Files.writeString(out.resolve("release.json"), index);
        }
    }

    @Test
    void aStampThatIsNotThatOfTheInputsIsFound() throws Exception {
        edit(json -> json.replaceFirst("(\"inputs\": \\[\\s*\\{\\s*\"path\": \")", "$1other-"));

        assertThat(faults()).containsExactly("'release.json' carries a stamp that is not that of the inputs it names");
    }

    @Test
    void findingsTakenOutOfTheIndexAreFound() throws Exception {
        edit(json -> json.replaceFirst("\"cues\": \\d+", "\"cues\": 99"));
        assertThat(faults()).singleElement().asString().startsWith("'plan.json' does not belong").contains("counts 99");
    }

    @Test
    void pathsThatLeadOutOfTheFolderAreNotFollowed() throws Exception {
        Path secret = Files.writeString(temp.resolve("secret.txt"), "x");
        String hash = sha256(secret);
        edit(json -> json.replaceFirst("\"path\": \"plan.json\",\\s*\"bytes\": \\d+,\\s*\"sha256\": \"\\w+\"",
                "\"path\": \"../secret.txt\", \"bytes\": 1, \"sha256\": \"" + hash + "\""));

        assertThat(faults()).containsExactly("'plan.json' is in every release, and 'release.json' does not name it",
                "'../secret.txt' is missing", "'plan.json' is no part of the release");
    }

    @Test
    void whatIsNoReleaseIsTold() throws Exception {
        assertThatThrownBy(() -> Verifier.verify(temp.resolve("nowhere"))).isInstanceOf(ReleaseException.class).hasMessageContaining("no folder");
        assertThatThrownBy(() -> Verifier.verify(temp)).isInstanceOf(ReleaseException.class).hasMessageContaining("holds no release.json");
        Files.writeString(out.resolve("release.json"), "[]");
        assertThatThrownBy(() -> Verifier.verify(out)).isInstanceOf(ReleaseException.class).hasMessageContaining("cannot be read");
    }

    /** Puts other bytes in place and makes the index agree, as a careful forger would. */
    private void smuggle(String name, byte[] bytes) throws Exception {
        String old = sha256(out.resolve(name));
        Files.write(out.resolve(name), bytes);
        String now = sha256(out.resolve(name));
        edit(json -> json.replace(old, now));
    }

    private void edit(UnaryOperator<String> change) throws IOException {
        Path index = out.resolve("release.json");
        String before = Files.readString(index, StandardCharsets.UTF_8);
        String after = change.apply(before);
        assertThat(after).isNotEqualTo(before);
        Files.writeString(index, after);
    }

    private static String sha256(Path file) throws Exception {
        return HexFormat.of().formatHex(MessageDigest.getInstance("SHA-256").digest(Files.readAllBytes(file)));
    }
}
