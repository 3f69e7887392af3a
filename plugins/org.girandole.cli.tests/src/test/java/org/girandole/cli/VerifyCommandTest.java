package org.girandole.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class VerifyCommandTest {
    @TempDir
    private Path temp;
    private Path release;

    @BeforeEach
    void releaseANewShow() throws Exception {
        Cli.in(temp).run("new", "my-show").exits(0);
        Cli.in(temp).run("release", "my-show/my-show.show", "--into", "out").exits(0);
        release = temp.resolve("out");
    }

    @Test
    void aReleaseIsWholeUntilAByteIsFlipped() throws Exception {
        assertThat(Cli.in(temp).run("verify", "out").exits(0).out()).startsWith("Whole and unaltered: ");
        Path table = release.resolve("standard.csv");
        byte[] bytes = Files.readAllBytes(table);
        bytes[bytes.length / 2] ^= 1;
        Files.write(table, bytes);
        assertThat(Cli.in(temp).run("verify", "out").exits(1).out()).contains("'standard.csv' was changed after it was released.");
    }

    @Test
    void whatIsMissingOrForeignIsNamed() throws Exception {
        Files.delete(release.resolve("plan.json"));
        Files.writeString(release.resolve("notes.txt"), "by hand");
        assertThat(Cli.in(temp).run("verify", "out").exits(1).out()).contains("'plan.json' is missing.")
                .contains("'notes.txt' is no part of the release.").contains("2 troubles");
    }

    @Test
    void anInputPutInByHandDoesNotFitTheStamp() throws Exception {
        Path index = release.resolve("release.json");
        String json = Files.readString(index, StandardCharsets.UTF_8);
        String forged = json.replaceFirst("\"path\": \"my-show.show\"", "\"path\": \"your-show.show\"");
        assertThat(forged).isNotEqualTo(json);
        Files.writeString(index, forged);
        assertThat(Cli.in(temp).run("verify", "out").exits(1).out()).contains("is not that of the inputs it lists");
    }

    @Test
    void aFolderThatIsNoReleaseIsTold() throws Exception {
        assertThat(Cli.in(temp).run("verify", "my-show").exits(1).out()).contains("is no release");
        assertThat(Cli.in(temp).run("verify", "nowhere").exits(2).err()).contains("there is no folder 'nowhere'");
    }
}
