package org.girandole.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.FileTime;
import java.nio.file.attribute.PosixFilePermissions;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class FormatCommandTest {
    private static final Path DOCS = Path.of("../../docs/command-line.md");
    private static final String LOOSE = "site  Pier{\nposition A at(0 m,0 m)\n}\n";
    private static final String FORMED = "site Pier {\n  position A at (0 m, 0 m)\n}\n";
    @TempDir
    private Path temp;

    @Test
    void onlyWhatIsNotInItsFormIsWritten() throws Exception {
        Path loose = Files.writeString(temp.resolve("loose.show"), LOOSE);
        Path formed = Files.writeString(temp.resolve("formed.show"), FORMED);
        FileTime longAgo = FileTime.fromMillis(1_000_000_000_000L);
        Files.setLastModifiedTime(formed, longAgo);

        Cli.Run check = Cli.in(temp).run("format", "--check", "loose.show", "formed.show").exits(1);
        assertThat(check.out()).isEqualTo("not in its form: loose.show\n");
        assertThat(Files.readString(loose)).startsWith("site  Pier{");

        assertThat(Cli.in(temp).run("format", "loose.show", "formed.show").exits(0).out()).isEqualTo("formatted loose.show\n");
        assertThat(Files.readString(loose)).isEqualTo(Files.readString(formed));
        assertThat(Files.getLastModifiedTime(formed)).isEqualTo(longAgo);
        assertThat(Cli.in(temp).run("format", "--check", "loose.show", "formed.show").exits(0).out()).isEmpty();
        try (var list = Files.list(temp)) {
            assertThat(list).hasSize(2);
        }
    }

    @Test
    void aScriptThatCannotBeReadKeepsAllAsTheyAre() throws Exception {
        Path loose = Files.writeString(temp.resolve("loose.show"), LOOSE);
        Files.writeString(temp.resolve("torn.show"), "site Pier { position A at (0 m,\n");
        Files.write(temp.resolve("latin.show"), new byte[] {'/', '/', (byte) 0xe9, '\n'});

        assertThat(Cli.in(temp).run("format", "loose.show", "torn.show").exits(2).err()).contains("'torn.show' has a syntax error");
        assertThat(Cli.in(temp).run("format", "loose.show", "latin.show").exits(2).err()).contains("'latin.show' is not UTF-8");
        assertThat(Cli.in(temp).run("format", "loose.show", "none.show").exits(2).err()).contains("'none.show'");
        assertThat(Files.readString(loose)).isEqualTo(LOOSE);
    }

    @Test
    void lineEndsRightsAndLinksStay() throws Exception {
        Path dos = Files.writeString(temp.resolve("dos.show"), LOOSE.replace("\n", "\r\n"));
        Files.setPosixFilePermissions(dos, PosixFilePermissions.fromString("rw-rw-r--"));
        Path link = Files.createSymbolicLink(temp.resolve("link.show"), dos);

        Cli.in(temp).run("format", "link.show").exits(0);

        assertThat(Files.readString(dos)).isEqualTo(FORMED.replace("\n", "\r\n"));
        assertThat(Files.getPosixFilePermissions(dos)).isEqualTo(PosixFilePermissions.fromString("rw-rw-r--"));
        assertThat(link).isSymbolicLink();
        Cli.in(temp).run("format", "--check", "dos.show").exits(0);
    }

    @Test
    void aNewShowIsInItsForm() throws Exception {
        for (String name : new String[] {"a", "my-show", "the-night-of-the-long-name-over-the-harbour"}) {
            Cli.in(temp).run("new", name).exits(0);
            assertThat(Cli.in(temp).run("format", "--check", name + "/" + name + ".show", name + "/catalogue.show").exits(0).out()).isEmpty();
        }
    }

    @Test
    void theHookOfTheDocsKeepsACommitFromBeingMade() throws Exception {
        Path project = Files.createDirectory(temp.resolve("project"));
        Git git = Git.init(project);
        git.hook("pre-commit", Git.block(DOCS, "### Before every commit"));
        Files.writeString(project.resolve("pier.show"), LOOSE);
        git.git("add", ".").exits(0);

        Cli.Run refused = git.git("commit", "-q", "-m", "A pier");
        assertThat(refused.code()).isNotZero();
        assertThat(refused.out() + refused.err()).contains("not in its form: pier.show");

        git.shell("girandole format pier.show && git add pier.show && git commit -q -m 'A pier'").exits(0);
        assertThat(git.git("show", "HEAD:pier.show").exits(0).out()).isEqualTo(FORMED);
    }
}
