package org.girandole.cli;

import static org.assertj.core.api.Assertions.assertThat;

import com.google.gson.JsonParser;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The example, one lot of it measured again: what a reviewer is told. */
class DiffCommandTest {
    @TempDir
    private Path temp;

    @BeforeEach
    void copyTheExample() throws IOException {
        for (String name : List.of("old", "new")) {
            Example.copyTo(temp.resolve(name));
        }
    }

    @Test
    void theSameShowDiffersInNothing() throws Exception {
        assertThat(Cli.in(temp).run("diff", "old/harbour.show", "new/harbour.show").exits(0).out()).contains("Nothing that audience or crew");
    }

    @Test
    void aLotMeasuredAgainIsToldInOneParagraphInGitToo() throws Exception {
        Path stock = temp.resolve("new/stock.show");
        git("init", "-q");
        git("add", ".");
        git("-c", "user.name=T. Example", "-c", "user.email=t@example.invalid", "commit", "-q", "-m", "Before");
        String before = Files.readString(stock);
        // 4.62 s + 0.12 s = 4.74 s, by hand
        String after = before.replace("rise 4.62 s", "rise 4.74 s");
        assertThat(after).isNotEqualTo(before);
        Files.writeString(stock, after);

        String paragraph = "fire 0.120 s earlier and are seen when they were before: the lot's measured rise is another";
        assertThat(Cli.in(temp).run("diff", "old/harbour.show", "new/harbour.show").exits(1).out())
                .contains(paragraph).contains("4.620 s before, now 4.740 s, -0.120 s");
        assertThat(Cli.in(temp).run("diff", "--git", "HEAD", "new/harbour.show").exits(1).out()).contains(paragraph);
        assertThat(Cli.in(temp).run("diff", "--git", "HEAD", "--output", "markdown", "new/harbour.show").exits(1).out())
                .contains("### For the audience");
        assertThat(JsonParser.parseString(Cli.in(temp).run("diff", "--output", "json", "old/harbour.show", "new/harbour.show").exits(1)
                .out()).getAsJsonObject().get("headline").getAsString()).contains("moved in time");
    }

    @Test
    void whatCannotBeComparedIsTold() throws Exception {
        assertThat(Cli.in(temp).run("diff", "old/harbour.show").exits(2).err()).contains("Two scripts are needed");
        git("init", "-q");
        assertThat(Cli.in(temp).run("diff", "--git", "nowhere", "new/harbour.show").exits(2).err()).contains("no revision 'nowhere'");
        Files.writeString(temp.resolve("new/harbour.show"), "show Other \"Other\" { }\n");
        assertThat(Cli.in(temp).run("diff", "old/harbour.show", "new/harbour.show").exits(2).err()).contains("two different shows");
    }

    @Test
    void aSideThatCannotBeReadIsNamed() throws Exception {
        git("init", "-q");
        git("add", ".");
        git("-c", "user.name=T. Example", "-c", "user.email=t@example.invalid", "commit", "-q", "-m", "Whole");
        Files.writeString(temp.resolve("old/stock.show"), "// Torn.\nlot {\n");

        assertThat(Cli.in(temp).run("diff", "old/harbour.show", "new/harbour.show").exits(2).err())
                .contains("the old script 'old/harbour.show' cannot be read whole, so there is nothing to compare: stock.show:2: ")
                .contains("Mend it; 'girandole check old/harbour.show' says all that is wrong with it.");
        assertThat(Cli.in(temp).run("diff", "new/harbour.show", "old/harbour.show").exits(2).err())
                .contains("the new script 'old/harbour.show' cannot be read whole");
        assertThat(Cli.in(temp).run("check", "old/harbour.show").exits(1).out()).contains("old/stock.show:2:");
        assertThat(Cli.in(temp).run("waivers", "old/harbour.show").exits(2).err())
                .contains("'old/harbour.show' cannot be read whole, so what its waivers cover is not known: stock.show:2: ");
        // The same in git: now the new side is torn, after another commit the old one.
        assertThat(Cli.in(temp).run("diff", "--git", "HEAD", "old/harbour.show").exits(2).err()).contains("the new script 'old/harbour.show'");
        git("-c", "user.name=T. Example", "-c", "user.email=t@example.invalid", "commit", "-q", "-a", "-m", "Torn");
        git("checkout", "-q", "HEAD~1", "--", "old/stock.show");
        assertThat(Cli.in(temp).run("diff", "--git", "HEAD", "old/harbour.show").exits(2).err())
                .contains("the old script, 'harbour.show' as it was in revision 'HEAD', cannot be read whole").contains("Name a revision in which it can be read.");
        Files.copy(temp.resolve("old/harbour.show"), temp.resolve("old/later.show"));
        assertThat(Cli.in(temp).run("diff", "--git", "HEAD", "old/later.show").exits(2).err()).contains("there is no 'later.show' in revision 'HEAD'");
    }

    @Test
    void gitItselfShowsThePlansDifference() throws Exception {
        Path repository = temp.resolve("new");
        Git git = Git.init(repository);
        git.shell(Git.block(Path.of("../../docs/review.md"), "## In git diff").replace("night.show", "harbour.show")).exits(0);
        Files.writeString(repository.resolve("notes.show"), "// nothing yet\n");
        git.shell("git add . && git commit -q -m Before").exits(0);
        Path stock = repository.resolve("stock.show");
        Files.writeString(stock, Files.readString(stock).replace("rise 4.62 s", "rise 4.74 s"));
        Files.writeString(repository.resolve("notes.show"), "// something\n");

        String shown = git.git("diff").exits(0).out();

        // The whole report of the command, from its headline on.
        String report = Cli.in(temp).run("diff", "old/harbour.show", "new/harbour.show").exits(1).out();
        assertThat(shown).contains("what stock.show changes in harbour.show").contains(report.substring(report.indexOf("\n\n")))
                .contains("what notes.show changes in harbour.show\nShown as text: harbour.show does not use it").contains("+// something");
        Files.writeString(stock, "lot {\n");
        assertThat(git.git("diff", "--", "stock.show").exits(0).out()).contains("+lot {");
    }

    @Test
    void gitComparesListingsOfThePlanToo() throws Exception {
        Path repository = temp.resolve("new");
        Git git = Git.init(repository);
        git.shell(Git.block(Path.of("../../docs/review.md"), "## In git log").replace("night.show", "harbour.show")).exits(0);
        git.shell("git add . && git commit -q -m Before").exits(0);
        Path stock = repository.resolve("stock.show");
        Files.writeString(stock, Files.readString(stock).replace("rise 4.62 s", "rise 4.74 s"));
        git.shell("git commit -q -a -m After").exits(0);

        // Hero is seen at 1:48.667 as before; its firing is 0.120 s, three frames of 25 a second, earlier.
        assertThat(git.git("log", "-p", "-1").exits(0).out()).containsPattern("-cue Hero@D[^\n]*fired 10:02:\\d\\d:\\d\\d")
                .containsPattern("\\+cue Hero@D").doesNotContain("+lot L107");
    }

    private void git(String... words) throws Exception {
        List<String> command = Stream.concat(Stream.of("git", "-C", temp.toString()), Stream.of(words)).toList();
        assertThat(new ProcessBuilder(command).inheritIO().start().waitFor()).isZero();
    }
}
