package org.girandole.lang;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Random;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Half-typed scripts load like any other: what is wrong with them is told, and nothing breaks. */
class PrefixTest {
    private static final Path TOUR = Path.of("src/test/resources/tour");
    private static final Pattern TOKEN = Pattern.compile("\\s+|\\w+|\"[^\"\\n]*\"|.");
    private static final int MUTANTS = 150;

    private final ShowLoader loader = new ShowLoader();

    @TempDir
    private Path project;

    /** The tour in one file: loading it again and again is quicker without the files it uses. */
    private static String tour() throws IOException {
        return Files.readString(TOUR.resolve("tour.show")).replaceAll("(?m)^use .*\\n", "") + Files.readString(TOUR.resolve("quay.show"))
                + Files.readString(TOUR.resolve("catalogue/house.show"));
    }

    private static List<String> tokens(String text) {
        List<String> tokens = new ArrayList<>();
        Matcher m = TOKEN.matcher(text);
        while (m.find()) {
            tokens.add(m.group());
        }
        return tokens;
    }

    private LoadedShow load(String text) throws IOException {
        return loader.load(Files.writeString(project.resolve("half.show"), text));
    }

    @Test
    void theTourInOneFileHasNoProblems() throws IOException {
        assertThat(load(tour()).problems()).isEmpty();
    }

    @Test
    void everyBeginningOfTheTourLoads() throws IOException {
        StringBuilder beginning = new StringBuilder();
        List<String> tokens = tokens(tour());
        for (int i = 0; i < tokens.size(); i++) {
            beginning.append(tokens.get(i));
            // A token more or less of white space makes no other script.
            if (!tokens.get(i).isBlank() && i % 2 == 0) {
                assertSane(load(beginning.toString()));
            }
        }
    }

    @Test
    void wordsLostDoubledAndSwappedLoad() throws IOException {
        Random random = new Random(20270619);
        List<String> tokens = tokens(tour());
        for (int i = 0; i < MUTANTS; i++) {
            List<String> mutant = new ArrayList<>(tokens);
            for (int change = random.nextInt(3); change >= 0; change--) {
                int at = random.nextInt(mutant.size());
                switch (random.nextInt(3)) {
                    case 0 -> mutant.remove(at);
                    case 1 -> mutant.add(at, " " + tokens.get(random.nextInt(tokens.size())) + " ");
                    default -> Collections.swap(mutant, at, random.nextInt(mutant.size()));
                }
            }
            assertSane(load(String.join("", mutant)));
        }
    }

    private static void assertSane(LoadedShow loaded) {
        assertThat(loaded.problems()).allSatisfy(problem -> {
            assertThat(problem.message()).doesNotContain("null", "RULE_", "viable", "mismatched");
            assertThat(problem.source().line()).isPositive();
            assertThat(problem.source().column()).isPositive();
        });
    }
}
