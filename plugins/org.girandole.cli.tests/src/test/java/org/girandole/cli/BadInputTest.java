package org.girandole.cli;

import static org.assertj.core.api.Assertions.assertThat;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermissions;
import java.security.MessageDigest;
import java.util.HexFormat;
import java.util.Map;
import java.util.TreeMap;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Whatever is wrong with the input: a clear message, the right exit code, no stack trace, nothing half-written, nothing lost. */
class BadInputTest {
    private static final String NOBODY = "65534";
    @TempDir
    private Path temp;

    @Test
    void scriptThatIsNotThere() throws Exception {
        assertThat(Cli.in(temp).run("check", "nope.show").exits(2).err()).contains("'nope.show'");
        assertThat(Cli.in(temp).run("release", "nope.show").exits(2).err()).contains("'nope.show'");
        assertThat(Cli.in(temp).run("check", ".").exits(2).err()).contains("not a file");
    }

    @Test
    void scriptOutsideOfTheNamedRoot() throws Exception {
        write("a.show", "show A { }\n");
        Files.createDirectory(temp.resolve("root"));

        assertThat(Cli.in(temp).run("check", "--root", "root", "a.show").exits(2).err()).contains("outside of the project folder");
    }

    @Test
    void scriptThatMayNotBeRead() throws Exception {
        Path open = openFolder();
        Path script = Files.writeString(open.resolve("a.show"), "show A { }\n");
        Files.setPosixFilePermissions(script, PosixFilePermissions.fromString("---------"));

        assertThat(asNobody(open).run("check", "a.show").exits(2).err()).contains("may not be read");
    }

    @Test
    void usedFileThatMayNotBeRead() throws Exception {
        Path open = openFolder();
        Files.writeString(open.resolve("a.show"), "use \"b.show\"\nshow A { }\n");
        Path used = Files.writeString(open.resolve("b.show"), "\n");
        Files.setPosixFilePermissions(used, PosixFilePermissions.fromString("---------"));

        assertThat(asNobody(open).run("check", "a.show").exits(1).out()).contains("a.show:1:5: error unreadable");
    }

    @Test
    void emptyFile() throws Exception {
        write("a.show", "");

        assertThat(Cli.in(temp).run("check", "a.show").exits(0).out()).contains("info no-show");
        assertThat(Cli.in(temp).run("release", "a.show").exits(2).err()).contains("no show block");
    }

    @Test
    void releaseIntoAFolderThatIsNotEmpty() throws Exception {
        Cli.in(temp).run("new", "show").exits(0);
        Files.writeString(Files.createDirectory(temp.resolve("out")).resolve("thesis.txt"), "mine");
        Map<String, String> before = hashes(temp);

        assertThat(Cli.in(temp).run("release", "show/show.show", "--into", "out").exits(3).err()).contains("holds no release.json")
                .contains("Nothing was released");

        assertThat(hashes(temp)).isEqualTo(before);
    }

    @Test
    void releaseIntoAFolderThatMayNotBeWritten() throws Exception {
        Path open = openFolder();
        asNobody(open).run("new", "show").exits(0);
        Path locked = Files.createDirectory(open.resolve("locked"));
        Files.setPosixFilePermissions(locked, PosixFilePermissions.fromString("r-xr-xr-x"));

        assertThat(asNobody(open).run("release", "show/show.show", "--into", "locked/out").exits(3).err())
                .contains("may not be written").contains("locked");
        assertThat(asNobody(open).run("new", "locked/other").exits(3).err()).contains("may not be written");
        assertThat(locked).isEmptyDirectory();
    }

    @Test
    void releaseOntoAFullDisk() throws Exception {
        Cli.in(temp).run("new", "show").exits(0);
        Path disk = Files.createDirectory(temp.resolve("disk"));
        assumeTrue(succeeds("mount", "-t", "tmpfs", "-o", "size=4m", "tmpfs", disk.toString()), "needs the right to mount a tmpfs");
        try {
            Cli.in(temp).run("release", "show/show.show", "--into", "disk/out").exits(0);
            Map<String, String> before = hashes(disk);
            fill(disk.resolve("ballast"));
            Files.writeString(temp.resolve("show/show.show"), Files.readString(temp.resolve("show/show.show")) + "// changed\n");

            assertThat(Cli.in(temp).run("release", "show/show.show", "--into", "disk/out").exits(3).err())
                    .contains("disk is full").contains("unchanged");

            Files.delete(disk.resolve("ballast"));
            assertThat(hashes(disk)).isEqualTo(before);
        } finally {
            succeeds("umount", disk.toString());
        }
    }

    @Test
    void aShowWithErrorsLeavesTheOlderReleaseIntact() throws Exception {
        Cli.in(temp).run("new", "show").exits(0);
        Cli.in(temp).run("release", "show/show.show", "--into", "out").exits(0);
        Map<String, String> before = hashes(temp.resolve("out"));
        Path script = temp.resolve("show/show.show");
        Files.writeString(script, Files.readString(script).replace("RedPeony75", "NoSuchShell"));

        assertThat(Cli.in(temp).run("release", "show/show.show", "--into", "out").exits(1).err()).contains("Nothing was released");

        assertThat(hashes(temp.resolve("out"))).isEqualTo(before);
    }

    private void write(String name, String script) throws IOException {
        Files.writeString(temp.resolve(name), script);
    }

    /** A folder in which another user may write, so that rights can be tested although the tests run as root. */
    private Path openFolder() throws IOException {
        Path open = Files.createDirectory(temp.resolve("open"));
        Files.setPosixFilePermissions(temp, PosixFilePermissions.fromString("rwxr-xr-x"));
        Files.setPosixFilePermissions(open, PosixFilePermissions.fromString("rwxrwxrwx"));
        return open;
    }

    private static Cli asNobody(Path folder) throws IOException, InterruptedException {
        if (!"root".equals(System.getProperty("user.name"))) {
            return Cli.in(folder);
        }
        assumeTrue(succeeds("setpriv", "--reuid=" + NOBODY, "--regid=" + NOBODY, "--clear-groups", "test", "-r",
                Path.of("../org.girandole.cli/target/girandole.jar").toAbsolutePath().toString()), "needs setpriv and a jar that all may read");
        return Cli.in(folder).by("setpriv", "--reuid=" + NOBODY, "--regid=" + NOBODY, "--clear-groups");
    }

    private static boolean succeeds(String... command) throws InterruptedException {
        try {
            return new ProcessBuilder(command).redirectErrorStream(true).redirectOutput(ProcessBuilder.Redirect.DISCARD).start()
                    .waitFor() == 0;
        } catch (IOException e) {
            return false;
        }
    }

    private static void fill(Path ballast) throws IOException {
        try (var out = Files.newOutputStream(ballast)) {
            byte[] block = new byte[4096];
            while (true) {
                out.write(block);
            }
        } catch (IOException full) {
            assertThat(Files.size(ballast)).isPositive();
        }
    }

    private static Map<String, String> hashes(Path folder) throws Exception {
        Map<String, String> hashes = new TreeMap<>();
        try (Stream<Path> walk = Files.walk(folder)) {
            for (Path file : walk.filter(p -> !p.equals(folder)).toList()) {
                String hash = Files.isRegularFile(file)
                        ? HexFormat.of().formatHex(MessageDigest.getInstance("SHA-256").digest(Files.readAllBytes(file)))
                        : "folder";
                hashes.put(folder.relativize(file).toString(), hash);
            }
        }
        return hashes;
    }
}
