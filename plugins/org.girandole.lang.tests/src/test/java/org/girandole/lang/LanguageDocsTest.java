package org.girandole.lang;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.girandole.lang.compile.Dimension;
import org.girandole.plan.Finding;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** Every program of the language reference is read; {@code in-score} ones stand in a score of the stage below. */
class LanguageDocsTest {
    private static final Path PAGE = Path.of("../../docs/language.md");
    private static final Pattern PROGRAM = Pattern.compile("```show( in-score)?(?: fails=([a-z-]+))?\\n(.*?)```", Pattern.DOTALL);
    private static final String STAGE = """
            site Pier { position A at (-30 m, 0 m)  position B at (0 m, 0 m)  position C at (30 m, 0 m) }
            shell Dahlia { calibre 75 mm  rise 2.4 s }
            comet Star { calibre 45 mm }
            lot L7 of Dahlia { count 12 }
            module type Box16 { pins 16 }
            module M1 of Box16 at A .. C
            rack R1 at B { 5 tubes 75 mm }
            soundtrack Waltz {
              length 3:20
              timecode 25 fps from 10:00:00:00
              tempo { at 0:01.500 84 bpm 3/4 }
              mark Swell at bar 9
              mark Break at bar 33
              mark Last at 3:14
            }
            score Waltz in slot 0 {
            """;

    @TempDir
    private Path project;

    record Program(String text, boolean inScore, String fails) {
    }

    static List<Program> programs() throws IOException {
        List<Program> programs = new ArrayList<>();
        Matcher m = PROGRAM.matcher(Files.readString(PAGE, StandardCharsets.UTF_8));
        while (m.find()) {
            programs.add(new Program(m.group(3), m.group(1) != null, m.group(2)));
        }
        return programs;
    }

    @ParameterizedTest
    @MethodSource("programs")
    void isReadAsThePageSays(Program program) throws IOException {
        Path script = Files.writeString(project.resolve("page.show"), program.inScore ? STAGE + program.text + "}\n" : program.text);
        List<String> rules = new ShowLoader().load(script).problems().stream().map(Finding::rule).toList();
        assertThat(rules).isEqualTo(program.fails == null ? List.of() : List.of(program.fails));
    }

    @Test
    void thePageHasPrograms() throws IOException {
        assertThat(programs()).hasSizeGreaterThan(12);
    }

    @Test
    void everyUnitIsInTheTable() throws IOException {
        String page = Files.readString(PAGE, StandardCharsets.UTF_8);
        for (Dimension dimension : Dimension.values()) {
            if (dimension != Dimension.RATE) {
                String words = dimension.words().replaceFirst("^an? ", "").toLowerCase(Locale.ROOT);
                assertThat(page).contains("| " + words + " | ");
                String row = page.lines().filter(line -> line.startsWith("| " + words + " | ")).findFirst().orElseThrow();
                // The two code points of mu and of ohm look alike; the page shows one of each.
                assertThat(dimension.symbols()).filteredOn(symbol -> !symbol.equals("\u2126") && !symbol.equals("\u03BCF"))
                        .allSatisfy(symbol -> assertThat(row).contains("`" + symbol + "`"));
            }
        }
    }
}
