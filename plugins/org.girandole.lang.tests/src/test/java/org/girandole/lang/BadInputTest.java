package org.girandole.lang;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.girandole.plan.Finding;
import org.girandole.plan.script.ScoreItem;
import org.girandole.plan.script.ShowScript;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Files that nobody wrote on purpose, and some that somebody did. */
class BadInputTest {
    private static final String SHOW = "site Quay { position A at (0 m, 0 m) }\nshell Peony { rise 2 s }\nshow S { site Quay }\n"
            + "soundtrack Tides { length 1:00 }\n";

    private final ShowLoader loader = new ShowLoader();

    @TempDir
    private Path project;

    private LoadedShow load(byte[] bytes) throws IOException {
        return loader.load(Files.write(project.resolve("show.show"), bytes));
    }

    private LoadedShow load(String text) throws IOException {
        return load(text.getBytes(StandardCharsets.UTF_8));
    }

    private static List<String> words(LoadedShow loaded) {
        return loaded.problems().stream().map(p -> p.source() + " " + p.rule() + ": " + p.message()).toList();
    }

    @Test
    void anEmptyFileIsALibraryWithNothingInIt() throws IOException {
        LoadedShow loaded = load("");
        assertThat(loaded.problems()).isEmpty();
        assertThat(loaded.script()).isEmpty();
        assertThat(loaded.inputs()).extracting(i -> i.path()).containsExactly("show.show");
        // SHA-256 of nothing, FIPS 180-4 example values.
        assertThat(loaded.inputs().get(0).sha256()).isEqualTo("e3b0c44298fc1c149afbf4c8996fb92427ae41e4649b934ca495991b7852b855");
    }

    @Test
    void aShowWithoutANameIsNotCalledByOne() throws IOException {
        assertThat(words(load("show { }\nshow Two { }\n"))).contains("show.show:2:6 duplicate-name: There is already a show; a script has one");
    }

    @Test
    void aFileThatIsNotThere() {
        assertThat(words(loader.load(project.resolve("none.show")))).containsExactly("none.show:1:1 unreadable: There is no such file: none.show");
    }

    @Test
    void aFolder() throws IOException {
        Files.createDirectory(project.resolve("folder.show"));
        assertThat(words(loader.load(project.resolve("folder.show"))))
                .containsExactly("folder.show:1:1 unreadable: This is a folder, not a script: folder.show");
    }

    @Test
    void aFileOfAnotherKind() throws IOException {
        Files.writeString(project.resolve("notes.txt"), SHOW);
        assertThat(words(loader.load(project.resolve("notes.txt"))))
                .containsExactly("notes.txt:1:1 unreadable: This is not a script; scripts end in .show: notes.txt");
    }

    @Test
    void aScriptOutsideOfItsProject() throws IOException {
        Path script = Files.writeString(project.resolve("out.show"), SHOW);
        LoadedShow loaded = loader.load(script, Files.createDirectory(project.resolve("inner")));
        assertThat(loaded.problems()).extracting(Finding::rule).containsExactly("use-outside");
        assertThat(loaded.script()).isEmpty();
    }

    @Test
    void aLinkThatLeadsOutOfTheProject() throws IOException {
        Path inner = Files.createDirectory(project.resolve("inner"));
        Path outside = Files.writeString(project.resolve("secret.show"), "shell Peony { rise 2 s }\n");
        Files.createSymbolicLink(inner.resolve("link.show"), outside);
        Path script = Files.writeString(inner.resolve("main.show"), "use \"link.show\"\n");
        assertThat(loader.load(script).problems()).extracting(Finding::rule).containsExactly("use-outside");
        assertThat(loader.load(inner.resolve("link.show")).problems()).extracting(Finding::rule).containsExactly("use-outside");
    }

    @Test
    void bytesThatAreNoText() throws IOException {
        // The second line holds an e with acute accent in ISO 8859-1.
        LoadedShow loaded = load("shell Peony { rise 2 s }\nshell Caf\u00E9 { rise 2 s }\n".getBytes(StandardCharsets.ISO_8859_1));
        assertThat(words(loaded)).first().isEqualTo("show.show:2:10 not-utf8: This file is not UTF-8 text");
        assertThat(loaded.problems().get(0).found()).isEqualTo("byte 0xE9");
    }

    @Test
    void aByteOrderMarkIsNoMistake() throws IOException {
        assertThat(load("\uFEFF" + SHOW).problems()).isEmpty();
    }

    @Test
    void lettersOfEveryScriptAreNames() throws IOException {
        LoadedShow loaded = load("shell Päonie { rise 2 s }\nshell Пион like Päonie { colour \"rouge à l’or\" }\nshell 牡丹 like Пион { }\n");
        assertThat(loaded.problems()).isEmpty();
    }

    @Test
    void aLineOfTenMegabytes() throws IOException {
        LoadedShow loaded = load("shell Peony { rise 2 s }\n" + "x ".repeat(5 << 20));
        assertThat(words(loaded)).containsExactly("show.show:2:1 unreadable: Line 2 is too long to be read");
        assertThat(loaded.problems().get(0).found()).isEqualTo("10485760 characters");
    }

    @Test
    void binaryRubbish() throws IOException {
        byte[] bytes = new byte[20_000];
        for (int i = 0; i < bytes.length; i++) {
            bytes[i] = (byte) (i * 7919 >> 3);
        }
        assertThat(load(bytes).problems()).isNotEmpty().hasSizeLessThanOrEqualTo(200);
    }

    @Test
    void blocksNestedWithoutEnd() throws IOException {
        LoadedShow loaded = load(SHOW + "score Tides in slot 0 {\n" + "repeat 2 every 1 s {\n".repeat(50_000));
        assertThat(words(loaded)).anyMatch(w -> w.contains("syntax: Blocks are nested more than 40 deep here"));
    }

    @Test
    void bracesOfUnknownBlocksNestedWithoutEnd() throws IOException {
        assertThat(load("foo " + "{".repeat(90_000)).problems()).extracting(Finding::rule).containsOnly("syntax");
    }

    @Test
    void aTimeOfManySteps() throws IOException {
        LoadedShow loaded = load(SHOW + "score Tides in slot 0 {\n  at 0:10" + "\n + 1 ms".repeat(20_000) + " A Peony\n}\n");
        assertThat(loaded.problems()).isEmpty();
        ScoreItem.Cue cue = (ScoreItem.Cue) loaded.script().orElseThrow().scores().get(0).items().get(0);
        assertThat(cue.at().steps()).hasSize(20_000);
    }

    @Test
    void aChainOfLikesOfTenThousand() throws IOException {
        StringBuilder text = new StringBuilder("shell E0 { rise 2 s }\n");
        for (int i = 1; i <= 10_000; i++) {
            text.append("shell E").append(i).append(" like E").append(i - 1).append('\n');
        }
        assertThat(load(text.toString()).problems()).isEmpty();
    }

    @Test
    void figuresThatMultiply() throws IOException {
        StringBuilder text = new StringBuilder(SHOW).append("figure F0 { at 0 A Peony }\n");
        for (int i = 1; i <= 40; i++) {
            text.append("figure F").append(i).append(" { play F").append(i - 1).append(" at 0  play F").append(i - 1).append(" at 1 s }\n");
        }
        LoadedShow loaded = load(text + "score Tides in slot 0 { play F40 at 0:10 }\n");
        assertThat(words(loaded)).singleElement().asString()
                .contains("number-range: The figures of this show multiply to more lines than can be shot");
    }

    @Test
    void aBrokenCueLeavesTheOthersStanding() throws IOException {
        LoadedShow loaded = load(SHOW + "score Tides in slot 0 {\n  at 0:10 A Peony\n  at 0:11 A Poeny\n  at 0:12\n  at 0:13 A Peony\n}\n");
        assertThat(loaded.problems()).extracting(Finding::rule).containsExactly("unresolved-name", "syntax");
        ShowScript script = loaded.script().orElseThrow();
        assertThat(script.scores().get(0).items()).hasSize(2);
    }

    @Test
    void aBrokenQuantityIsLeftOutOfItsEffect() throws IOException {
        LoadedShow loaded = load(SHOW + "shell Other { calibre 75 mm  rise 2 mm }\n");
        assertThat(loaded.problems()).extracting(Finding::rule).containsExactly("wrong-unit");
        assertThat(loaded.script().orElseThrow().effects()).filteredOn(e -> e.name().equals("Other")).singleElement().satisfies(effect -> {
            assertThat(effect.calibreM()).contains(0.075);
            assertThat(effect.rise()).isEmpty();
        });
    }
}
