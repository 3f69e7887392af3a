package org.girandole.cli;

import static org.assertj.core.api.Assertions.assertThat;

import com.google.gson.JsonObject;
import com.google.gson.JsonParser;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.Map;
import java.util.TreeMap;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class CommandLineTest {
    private static final String[] COMMANDS = {
        "check",
        "release",
        "allocate",
        "explain",
        "diff",
        "git-diff",
        "git-text",
        "site",
        "format",
        "waivers",
        "verify",
        "sign",
        "meter",
        "account",
        "reliability",
        "timecode",
        "new",
        "serve",
        "completion",
    };

    @TempDir
    private Path temp;

    @Test
    void helpNamesEveryCommandAndExitCode() throws Exception {
        assertThat(Cli.in(temp).run("--help").exits(0).out()).contains(COMMANDS).contains("Examples:", "Exit codes:", " 70 ");
        for (String command : COMMANDS) {
            assertThat(Cli.in(temp).run("help", command).exits(0).out()).contains("Usage: girandole " + command).contains("Example");
        }
    }

    @Test
    void versionIsThatOfTheBuild() throws Exception {
        assertThat(Cli.in(temp).run("--version").exits(0).out()).matches("(?s)girandole \\d+\\.\\d+\\.\\d+.*");
    }

    @Test
    void wrongCommandLinesAreTold() throws Exception {
        assertThat(Cli.in(temp).run().exits(2).err()).startsWith("Say what to do");
        assertThat(Cli.in(temp).run("chek").exits(2).err()).contains("'chek'").contains("girandole check");
        assertThat(Cli.in(temp).run("check").exits(2).err()).contains("SCRIPT");
        assertThat(Cli.in(temp).run("check", "--output", "xml", "a.show").exits(2).err()).contains("xml").contains("sarif");
    }

    @Test
    void completionIsAScriptForTheShell() throws Exception {
        Path script = Files.writeString(temp.resolve("completion"), Cli.in(temp).run("completion").exits(0).out());

        Process bash = new ProcessBuilder("bash", "-n", script.toString()).redirectErrorStream(true).start();
        assertThat(bash.waitFor()).isZero();
        assertThat(Files.readString(script)).contains("--output", "sarif");
    }

    @Test
    void aNewProjectHasNoErrorsAndIsReleased() throws Exception {
        Cli.in(temp).run("new", "my-show").exits(0);

        Cli.Run check = Cli.in(temp).run("check", "my-show/my-show.show").exits(0);
        // Its mine is at a distance that the shipped table knows from memory only; whoever begins with it is told.
        assertThat(check.out()).contains("distance-unverified").endsWith("no errors, 1 warning, no notes. 1 script checked.\n");
        Cli.in(temp).run("release", "my-show/my-show.show", "--into", "out").exits(0);
        assertThat(temp.resolve("out/release.json")).exists();
        assertThat(temp.resolve("out/standard.csv")).exists();
        assertThat(Cli.in(temp).run("explain", "my-show/my-show.show", "First").exits(0).out()).contains("First");
    }

    @Test
    void newLeavesAFolderThatIsInUse() throws Exception {
        Files.writeString(Files.createDirectory(temp.resolve("mine")).resolve("thesis.txt"), "mine");

        assertThat(Cli.in(temp).run("new", "mine").exits(3).err()).contains("not empty");
        assertThat(Cli.in(temp).run("new", "123").exits(2).err()).contains("Choose a name");
        try (Stream<Path> list = Files.list(temp.resolve("mine"))) {
            assertThat(list).hasSize(1);
        }
    }

    @Test
    void releasesAreTheSameOnAnyDayInAnyZoneAndLocale() throws Exception {
        Cli.in(temp).run("new", "my-show").exits(0);
        Cli.in(temp).java("-Duser.timezone=Pacific/Kiritimati", "-Duser.language=ar", "-Duser.country=EG")
                .run("release", "my-show/my-show.show", "--into", "a").exits(0);
        Cli.in(temp).java("-Duser.timezone=America/Adak", "-Duser.language=tr", "-Dfile.encoding=ISO-8859-1").env("LC_ALL", "C")
                .run("release", "my-show/my-show.show", "--into", "b").exits(0);

        Map<String, byte[]> first = files(temp.resolve("a"));
        Map<String, byte[]> second = files(temp.resolve("b"));
        assertThat(second.keySet()).isEqualTo(first.keySet());
        first.forEach((name, bytes) -> assertThat(Arrays.equals(bytes, second.get(name))).as(name).isTrue());
    }

    @Test
    void outputIsUtf8WhateverTheLocaleSays() throws Exception {
        Files.writeString(temp.resolve("a.show"), "show A \"Fête d'été ✦\" {\n  nonsense\n}\n");

        assertThat(Cli.in(temp).java("-Dfile.encoding=ISO-8859-1").env("LC_ALL", "C").run("check", "--output", "json", "a.show").out())
                .doesNotContain("\uFFFD");
    }

    @Test
    void findingsOfSeveralScriptsAreToldOnceWithPathsThatOpen() throws Exception {
        Files.createDirectories(temp.resolve("shows"));
        Files.writeString(temp.resolve("shows/a.show"), "show A {\n  nonsense\n}\n");
        Files.writeString(temp.resolve("shows/b.show"), "show B {\n  rubbish\n}\n");

        String text = Cli.in(temp).run("check", "shows/a.show", "shows/b.show", "shows/a.show").exits(1).out();

        assertThat(text).containsOnlyOnce("shows/a.show:2:3: error unknown-field")
                .containsOnlyOnce("shows/b.show:2:3: error unknown-field").endsWith("3 scripts checked.\n");
    }

    @Test
    void machineFormsHoldTheSameFindings() throws Exception {
        Files.writeString(temp.resolve("a.show"), "show A {\n  nonsense\n}\n");

        JsonObject json = JsonParser.parseString(Cli.in(temp).run("check", "--output", "json", "a.show").exits(1).out())
                .getAsJsonObject();
        JsonObject sarif = JsonParser.parseString(Cli.in(temp).run("check", "--output", "sarif", "a.show").exits(1).out())
                .getAsJsonObject();

        assertThat(json.getAsJsonArray("findings")).isNotEmpty().hasSameSizeAs(
                sarif.getAsJsonArray("runs").get(0).getAsJsonObject().getAsJsonArray("results"));
        assertThat(json.getAsJsonArray("findings").toString()).contains("\"rule\":\"unknown-field\"");
    }

    @Test
    void failOnWarningMakesWarningsCount() throws Exception {
        Cli.in(temp).run("new", "w").exits(0);
        Path script = temp.resolve("w/w.show");
        // A module type without its pin gap is a warning: nothing could be checked against it.
        Files.writeString(script, Files.readString(script).replace("  pin gap 20 ms\n", ""));

        assertThat(Cli.in(temp).run("check", "w/w.show").exits(0).out()).contains("module-facts-missing", "2 warnings");
        Cli.in(temp).run("check", "--fail-on", "warning", "w/w.show").exits(1);
    }

    private static Map<String, byte[]> files(Path folder) throws IOException {
        Map<String, byte[]> files = new TreeMap<>();
        try (Stream<Path> walk = Files.walk(folder)) {
            for (Path file : walk.filter(Files::isRegularFile).toList()) {
                files.put(folder.relativize(file).toString(), Files.readAllBytes(file));
            }
        }
        return files;
    }
}
