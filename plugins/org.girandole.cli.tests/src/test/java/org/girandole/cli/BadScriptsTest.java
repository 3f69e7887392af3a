package org.girandole.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * Scripts with everything wrong that a script can have, checked in one run: each gets a finding at its place, and none keeps the others
 * from being checked.
 */
class BadScriptsTest {
    @TempDir
    private static Path temp;
    private static final List<String> NAMES = new ArrayList<>();
    private static Cli.Run run;

    @BeforeAll
    static void checkAll() throws Exception {
        Path project = Files.createDirectories(temp.resolve("project/inside")).getParent();
        Files.writeString(temp.resolve("outside.show"), "SECRET SECRET\n");
        script(project, "missing-use", "use \"nowhere.show\"\nshow A { }\n");
        script(project, "cycle", "use \"back.show\"\nshow A { }\n");
        Files.writeString(project.resolve("back.show"), "use \"cycle.show\"\n");
        script(project, "self", "use \"self.show\"\nshow A { }\n");
        script(project, "above", "use \"../outside.show\"\nshow A { }\n");
        script(project, "absolute", "use \"/etc/hostname\"\nshow A { }\n");
        script(project, "detour", "use \"inside/../../outside.show\"\nshow A { }\n");
        Files.createSymbolicLink(project.resolve("link.show"), temp.resolve("outside.show"));
        script(project, "linked", "use \"link.show\"\nshow A { }\n");
        Files.createDirectory(project.resolve("folder.show"));
        script(project, "use-folder", "use \"folder.show\"\nshow A { }\n");
        script(project, "latin", "");
        Files.write(project.resolve("latin.show"), "show A \"caf\u00e9\" { }\n".getBytes(StandardCharsets.ISO_8859_1));
        script(project, "binary", "");
        Files.write(project.resolve("binary.show"), binary());
        script(project, "long-comment", "show A { }\n// " + "x".repeat(10_000_000) + "\n");
        script(project, "long-line", "show A { " + "nonsense ".repeat(1_200_000) + "}\n");
        script(project, "nested", "show A { }\nsoundtrack S { length 1:00.000 }\nscore S in slot 1 { "
                + "repeat 2 every 1 s { ".repeat(3_000) + "at 0 s A X " + "}".repeat(3_000) + "}\n");
        script(project, "unit", "show A { sync within 3 furlongs }\n");
        script(project, "calibre-negative", "show A { }\nshell S { calibre -75 mm }\n");
        script(project, "calibre-zero", "show A { }\nshell S { calibre 0 mm }\n");
        script(project, "calibre-huge", "show A { }\nshell S { calibre 1000000 mm }\n");
        script(project, "calibre-endless", "show A { }\nshell S { calibre " + "9".repeat(400) + " mm }\n");
        script(project, "count-endless", "show A { }\nchain C of 99999999999999999999 X { }\n");
        script(project, "empty-show", "show A { }\n");
        script(project, "mark", "show A { }\nsoundtrack S {\n  length 1:00.000\n  mark M at M + 1 s\n}\n");
        script(project, "unclosed", "show A \"no end {\n");
        script(project, "unclosed-comment", "show A { } /* no end\n");
        List<String> args = new ArrayList<>(List.of("check"));
        args.addAll(NAMES);
        run = Cli.in(project).run(args.toArray(String[]::new));
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', value = {
        "missing-use.show:1:5: error use-missing: | nowhere.show",
        "back.show:1:5: error use-cycle: | cycle.show -> back.show -> cycle.show",
        "self.show:1:5: error use-cycle: | self.show",
        "above.show:1:5: error use-outside: | outside.show",
        "absolute.show:1:5: error use-outside: | hostname",
        "detour.show:1:5: error use-outside: | outside.show",
        "linked.show:1:5: error use-outside: | link.show",
        "use-folder.show:1:5: error | folder.show",
        "latin.show:1:12: error not-utf8: | UTF-8",
        "binary.show:1:1: error not-utf8: | UTF-8",
        "long-line.show:1:1: error | too long",
        "nested.show:3:| deep here",
        "unit.show:1:24: error unknown-unit: | furlongs",
        "calibre-negative.show:2:| error number-range",
        "calibre-zero.show:2:| error number-range",
        "calibre-huge.show:2:| error number-range",
        "calibre-endless.show:2:| error number-range",
        "count-endless.show:2:| error",
        "empty-show.show:1:6: | empty-show",
        "mark.show:4:13: error mark-cycle: | M",
        "unclosed.show:1:| error syntax",
        "unclosed-comment.show:| error syntax"})
    void isFoundAtItsPlace(String place, String word) {
        assertThat(run.out().lines().filter(line -> line.startsWith(place.strip()))).as(place).isNotEmpty()
                .anyMatch(line -> line.contains(word));
    }

    @Test
    void oneRunTellsThemAllAndFailsWithoutFuss() {
        run.exits(1);
        assertThat(run.err()).isEmpty();
        assertThat(run.out()).endsWith(" " + NAMES.size() + " scripts checked.\n");
    }

    @Test
    void nothingOutsideOfTheProjectIsShown() {
        assertThat(run.out()).doesNotContain("SECRET");
    }

    @Test
    void aFindingNeverPrintsMegabytes() {
        assertThat(run.out().lines()).allSatisfy(line -> assertThat(line).hasSizeLessThan(2_000));
    }

    private static void script(Path project, String name, String text) throws IOException {
        Files.writeString(project.resolve(name + ".show"), text);
        NAMES.add(name + ".show");
    }

    private static byte[] binary() {
        byte[] bytes = new byte[10_000];
        for (int i = 0; i < bytes.length; i++) {
            bytes[i] = (byte) (0xff - i * 37);
        }
        return bytes;
    }
}
