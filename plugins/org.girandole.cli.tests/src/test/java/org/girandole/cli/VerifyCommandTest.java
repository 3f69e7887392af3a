package org.girandole.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Files;
import java.nio.file.Path;
import java.security.MessageDigest;
import java.util.HexFormat;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class VerifyCommandTest {
    @TempDir
    private Path temp;

    @Test
    void oneByteOfAReleasedTableIsFound() throws Exception {
        Example.copyTo(temp);
        Cli.in(temp).run("release", "harbour.show", "--into", "out").exits(0);
        byte[] index = Files.readAllBytes(temp.resolve("out/release.json"));
        assertThat(Cli.in(temp).run("verify", "out").exits(0).out()).contains("whole and unaltered").contains("'Harbour Night', release ")
                .contains(HexFormat.of().formatHex(MessageDigest.getInstance("SHA-256").digest(index)));

        Path table = temp.resolve("out/controller.csv");
        byte[] bytes = Files.readAllBytes(table);
        bytes[bytes.length / 2] ^= 1;
        Files.write(table, bytes);
        Files.delete(temp.resolve("out/sheets/06-pull-list.pdf"));
        Files.writeString(temp.resolve("out/notes.txt"), "mine");

        assertThat(Cli.in(temp).run("verify", "out").exits(1).out()).contains("'controller.csv' was changed after it was released")
                .contains("'sheets/06-pull-list.pdf' is missing").contains("'notes.txt' is no part of the release").contains("do not load");
    }

    @Test
    void anInputPutInByHandDoesNotFitTheStamp() throws Exception {
        Cli.in(temp).run("new", "my-show").exits(0);
        Cli.in(temp).run("release", "my-show/my-show.show", "--into", "out").exits(0);
        Path index = temp.resolve("out/release.json");
        String json = Files.readString(index);
        String forged = json.replaceFirst("\"path\": \"my-show.show\"", "\"path\": \"your-show.show\"");
        assertThat(forged).isNotEqualTo(json);
        Files.writeString(index, forged);

        assertThat(Cli.in(temp).run("verify", "out").exits(1).out()).contains("is not that of the inputs it names");
    }

    @Test
    void aFolderThatIsNoReleaseIsTold() throws Exception {
        assertThat(Cli.in(temp).run("verify", "nowhere").exits(2).err()).contains("no folder 'nowhere'");
        assertThat(Cli.in(temp).run("verify", ".").exits(2).err()).contains("holds no release.json");
    }
}
