package org.girandole.lang;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** There is one form, it is reached in one step, and nothing but space is changed on the way. */
class ScriptFormatTest {
    private static final List<Path> SCRIPTS = List.of(Path.of("src/test"), Path.of("../../examples"));
    private static final Pattern TOKEN = Pattern.compile("//[^\\n]*|/\\*.*?\\*/|\"(?:\\\\.|[^\"\\\\\\n])*\"|[\\w^]+|\\s+|.", Pattern.DOTALL);
    private static final List<String> SPACES = List.of(" ", " ", " ", " ", "  ", "\n", "\n\n\n", "\t", " // aside\n", "\n// alone\n",
            " /* amid */ ", "\n/* two\nlines */\n", "\n\n  /* one */ // and another\n\n");
    private static final int ROUNDS = 40;

    private static final ScriptFormat FORMAT = new ScriptFormat();

    static List<Path> scripts() {
        List<Path> scripts = new ArrayList<>();
        for (Path root : SCRIPTS) {
            try (Stream<Path> files = Files.walk(root)) {
                files.filter(file -> file.toString().endsWith(".show") && Files.isRegularFile(file)).sorted().forEach(scripts::add);
            } catch (IOException e) {
                throw new UncheckedIOException(e);
            }
        }
        return scripts;
    }

    private static String format(String text) {
        return FORMAT.format(text).orElseThrow();
    }

    @ParameterizedTest
    @MethodSource("scripts")
    void twiceIsOnce(Path script) throws IOException {
        Optional<String> once = FORMAT.format(Files.readString(script, StandardCharsets.UTF_8));
        assertThat(once.flatMap(FORMAT::format)).isEqualTo(once);
    }

    @ParameterizedTest
    @MethodSource("scripts")
    void onlySpaceIsChanged(Path script) throws IOException {
        String text = Files.readString(script, StandardCharsets.UTF_8);
        FORMAT.format(text).ifPresent(formatted -> assertThat(tokens(formatted)).isEqualTo(tokens(text)));
    }

    @Test
    void theTourIsInItsForm() throws IOException {
        for (String name : List.of("tour.show", "quay.show", "catalogue/house.show")) {
            String text = Files.readString(Path.of("src/test/resources/tour").resolve(name), StandardCharsets.UTF_8);
            assertThat(format(text)).isEqualTo(text);
        }
    }

    @Test
    void theShowStaysTheSame(@TempDir Path project) throws IOException {
        Path tour = Path.of("src/test/resources/tour");
        Files.createDirectory(project.resolve("catalogue"));
        for (String name : List.of("quay.show", "catalogue/house.show")) {
            Files.copy(tour.resolve(name), project.resolve(name));
        }
        String text = Files.readString(tour.resolve("tour.show"), StandardCharsets.UTF_8);
        String flat = text.replaceAll("(?m) *//.*$", "").replaceAll("\\s+", " ");
        Files.writeString(project.resolve("tour.show"), format(flat));
        // Places, lines and hashes must differ; what is planned must not.
        assertThat(withoutPlaces(new ShowLoader().load(project.resolve("tour.show"))))
                .isEqualTo(withoutPlaces(new ShowLoader().load(tour.resolve("tour.show"))));
    }

    private static String withoutPlaces(LoadedShow loaded) {
        return loaded.script().orElseThrow().toString().replaceAll("source=[^,\\]]*", "").replaceAll("sha256=\\w+", "");
    }

    @Test
    void spaceAndCommentsAnywhereDoNoHarm() throws IOException {
        Random random = new Random(48);
        String tour = Files.readString(Path.of("src/test/resources/tour/tour.show"), StandardCharsets.UTF_8);
        for (int round = 0; round < ROUNDS; round++) {
            String text = respaced(tour, random);
            String once = format(text);
            assertThat(tokens(once)).isEqualTo(tokens(text));
            assertThat(format(once)).isEqualTo(once);
        }
    }

    /** The same words with other space and with comments between them. */
    private static String respaced(String script, Random random) {
        StringBuilder text = new StringBuilder();
        Matcher m = TOKEN.matcher(script);
        boolean afterLineComment = false;
        while (m.find()) {
            if (m.group().isBlank()) {
                text.append(afterLineComment ? "\n" : SPACES.get(random.nextInt(SPACES.size())));
            } else {
                text.append(m.group());
            }
            afterLineComment = m.group().startsWith("//");
        }
        return text.toString();
    }

    private static List<String> tokens(String text) {
        List<String> tokens = new ArrayList<>();
        Matcher m = TOKEN.matcher(text);
        while (m.find()) {
            if (!m.group().isBlank()) {
                tokens.add(m.group().strip());
            }
        }
        return tokens;
    }

    @Test
    void linesBlocksAndColumns() {
        assertThat(format("""
                site  Pier{position A at(-30m,0 m)
                   position Bridge at ( 0 m , 0 m )
                 group Ends=A,Bridge }


                shell Dahlia75"Red dahlia"{calibre 75mm rise 2.4 s+-0.15 s
                }
                igniter Match {}
                score Waltz in slot 0{at Swell+1/2 beat A ..Bridge 2x Star fan-20 deg..20 deg
                at bar 3 A Star in turn every 1/2 beat note "x"
                // alone

                repeat 4 every 1 bar{at 0 A Star}
                // last
                }
                """)).isEqualTo("""
                site Pier {
                  position A      at (-30 m, 0 m)
                  position Bridge at (0 m, 0 m)
                  group Ends = A, Bridge
                }

                shell Dahlia75 "Red dahlia" {
                  calibre 75 mm  rise 2.4 s +- 0.15 s
                }
                igniter Match { }
                score Waltz in slot 0 {
                  at Swell + 1/2 beat  A .. Bridge  2 x Star  fan -20 deg .. 20 deg
                  at bar 3             A            Star  in turn every 1/2 beat  note "x"
                  // alone

                  repeat 4 every 1 bar { at 0  A  Star }
                  // last
                }
                """);
    }

    @Test
    void longLinesDoNotMoveTheRest() {
        assertThat(format("""
                score Waltz in slot 0 {
                  at Swell + 1 bar + 2 beats + 250 ms + 1 frame A Star
                  at bar 3 A Star
                }
                """)).isEqualTo("""
                score Waltz in slot 0 {
                  at Swell + 1 bar + 2 beats + 250 ms + 1 frame  A  Star
                  at bar 3  A  Star
                }
                """);
    }

    @Test
    void whatCannotBeReadIsLeftAlone() {
        assertThat(FORMAT.format("shell Dahlia { calibre 75 mm rise\n")).isEmpty();
    }

    @Test
    void anEmptyScriptStaysEmpty() {
        assertThat(format("")).isEmpty();
    }
}
