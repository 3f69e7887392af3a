package org.girandole.cli;

import static org.assertj.core.api.Assertions.assertThat;

import com.google.gson.JsonObject;
import com.google.gson.JsonParser;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.MessageDigest;
import java.util.HexFormat;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** One release after the other. Only HTML where the pages do not matter: a PDF is the slow part of a release. */
class ReleaseHistoryTest {
    @TempDir
    private Path temp;

    @Test
    void theSecondReleaseSaysOnASheetWhatChangedSinceTheFirst() throws Exception {
        Example.copyTo(temp);
        Path show = temp.resolve("harbour.show");
        Files.writeString(show, Files.readString(show).replace("sheets pdf, html", "sheets html"));
        Cli.in(temp).run("release", "harbour.show", "--into", "first").exits(0);
        Path stock = temp.resolve("stock.show");
        Files.writeString(stock, Files.readString(stock).replace("rise 4.62 s", "rise 4.74 s"));

        Cli.in(temp).run("release", "harbour.show", "--into", "second", "--since", "first").exits(0);

        JsonObject first = index("first");
        // 4.74 s - 4.62 s by hand
        assertThat(Files.readString(temp.resolve("second/sheets/14-changes.html"))).contains("fire 0.120 s earlier").contains("L107")
                .contains("since the release with stamp " + first.get("stampPrinted").getAsString()).contains("Reviewed by");
        assertThat(index("second").get("since")).isEqualTo(first.get("stamp"));
        assertThat(Files.readString(temp.resolve("second/sheets/01-summary.html"))).contains("What changed since stamp");
        assertThat(Cli.in(temp).run("verify", "second").exits(0).out()).contains("whole and unaltered");
        String scripts = Cli.in(temp).run("diff", "first/scripts/harbour.show", "harbour.show").exits(1).out();
        assertThat(Cli.in(temp).run("diff", "first", "second").exits(1).out()).isEqualTo(scripts).contains("fire 0.120 s earlier");

        refused("harbour.show", "nothing has changed since", "--into", "third", "--since", "second");
    }

    @Test
    void aStampIsNotGivenToOtherContent() throws Exception {
        String show = small();
        Cli.in(temp).run("release", show, "--into", "first").exits(0);
        Cli.in(temp).run("release", show, "--into", "again").exits(0);
        // As a version of the program would leave it that writes the table otherwise.
        Path table = temp.resolve("again/standard.csv");
        String before = hash(table);
        Files.writeString(table, Files.readString(table).replace(",", ", "));
        Path index = temp.resolve("again/release.json");
        Files.writeString(index, Files.readString(index).replace(before, hash(table)));

        refused(show, "Sheets with one stamp must be alike", "--into", "third");
        refused(show, "'standard.csv' is another", "--into", "first");
        Files.writeString(temp.resolve(show), Files.readString(temp.resolve(show)) + "// a new stamp\n");
        Cli.in(temp).run("release", show, "--into", "third", "--since", "first").exits(0);
        assertThat(Cli.in(temp).run("verify", "third").exits(0).out()).contains("whole and unaltered");
        assertThat(temp.resolve("third/sheets/14-changes.pdf")).exists();
    }

    @Test
    void aPredecessorThatCannotBeBelievedIsRefused() throws Exception {
        String show = small();
        Cli.in(temp).run("release", show, "--into", "first").exits(0);
        Path other = temp.resolve("my-show/other.show");
        String text = Files.readString(temp.resolve(show));
        Files.writeString(other, text.replace("show MyShow", "show Other"));
        assertThat(Cli.in(temp).run("release", "my-show/other.show", "--into", "second", "--since", "first").exits(2).err())
                .contains("two different shows");
        refused(show, "no folder 'nowhere'", "--into", "second", "--since", "nowhere");
        Files.writeString(temp.resolve("first/scripts/my-show.show"), "// nothing left\n");
        refused(show, "'scripts/my-show.show' was changed after it was released", "--into", "second", "--since", "first");
        assertThat(Cli.in(temp).run("diff", "first", show).exits(2).err()).contains("'scripts/my-show.show' was changed");
    }

    private String small() throws Exception {
        Cli.in(temp).run("new", "my-show").exits(0);
        return "my-show/my-show.show";
    }

    private void refused(String show, String why, String... options) throws Exception {
        String before = names();
        Cli.Run run = Cli.in(temp).run(Stream.concat(Stream.of("release", show), Stream.of(options)).toArray(String[]::new)).staysCivil();
        assertThat(run.code()).isIn(2, 3);
        assertThat(run.err()).contains(why);
        assertThat(names()).isEqualTo(before);
    }

    private JsonObject index(String folder) throws IOException {
        return JsonParser.parseString(Files.readString(temp.resolve(folder).resolve("release.json"))).getAsJsonObject();
    }

    private String names() throws IOException {
        try (Stream<Path> list = Files.list(temp)) {
            return list.map(path -> path.getFileName().toString()).sorted().toList().toString();
        }
    }

    private static String hash(Path file) throws Exception {
        return HexFormat.of().formatHex(MessageDigest.getInstance("SHA-256").digest(Files.readAllBytes(file)));
    }
}
