package org.girandole.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class FormatCommandTest {
    @TempDir
    private Path temp;

    @Test
    void aScriptIsBroughtIntoItsFormOnce() throws Exception {
        Path script = temp.resolve("a.show");
        String ragged = "show   A \"A\"{\n// when\non 2027-06-19\n      sync within   100 ms }\n";
        Files.writeString(script, ragged);
        assertThat(Cli.in(temp).run("format", "--check", "a.show").exits(1).out()).contains("Not in its form: a.show");
        assertThat(script).hasContent(ragged);
        Cli.in(temp).run("format", "a.show").exits(0);
        String formatted = Files.readString(script);
        assertThat(formatted).contains("// when").isNotEqualTo(ragged);
        assertThat(formatted.replaceAll("\\s", "")).isEqualTo(ragged.replaceAll("\\s", ""));
        assertThat(Cli.in(temp).run("format", "--check", "a.show").exits(0).out()).contains("All files are in their form.");
    }

    @Test
    void whatCannotBeReadIsLeftAlone() throws Exception {
        Path script = Files.writeString(temp.resolve("broken.show"), "show A { sync sync sync\n");
        assertThat(Cli.in(temp).run("format", "broken.show").exits(2).err()).contains("left as it is");
        assertThat(script).hasContent("show A { sync sync sync\n");
        assertThat(Cli.in(temp).run("format", "nowhere.show").exits(2).err()).contains("cannot be read");
    }
}
