package org.girandole.lang;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.Random;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;
import org.girandole.physics.separation.ArticleKind;
import org.girandole.physics.separation.DistanceTable;
import org.girandole.physics.separation.FiringCase;
import org.girandole.physics.separation.Flag;
import org.girandole.physics.separation.Quantity;
import org.girandole.physics.separation.Requirement;
import org.girandole.physics.separation.ShippedTables;
import org.girandole.physics.separation.Verification;
import org.girandole.plan.Finding;
import org.girandole.plan.script.DistanceRules;
import org.girandole.plan.script.ShowScript;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * Distance tables of the language ask what the tables that come with the program ask; those are held against their documents by their own
 * tests.
 */
class DistancesTest {
    private static final int CASES = 20_000;
    /** Values at, beside and beyond the limits of the three tables, and the name under which a firing may lack them. */
    private static final Map<Quantity, double[]> VALUES = Map.of(
            Quantity.CALIBRE, new double[] {0.030, 0.049, 0.050, 0.075, 0.0751, 0.100, 0.150, 0.300, 0.3048, 0.310, 0.600, 0.700},
            Quantity.HEIGHT, new double[] {10, 30, 30.5, 60, 120, 250, 400},
            Quantity.DEBRIS_RANGE, new double[] {5, 50, 150, 500},
            Quantity.STRUCTURE, new double[] {0, 3, 25},
            Quantity.SLOPE, new double[] {0, 1, 20, 20.5},
            Quantity.TILT, new double[] {0, 4, 5, 10, 10.5, 15, 16, 20, 21, 45, 46},
            Quantity.WIND, new double[] {0, 9, 9.1, 10, 13, 13.5, 20});

    private static Map<String, DistanceTable> written;

    @TempDir
    private Path project;

    private static DistanceTable written(String name) {
        if (written == null) {
            LoadedShow loaded = new ShowLoader().load(Path.of("src/test/resources/distances/tables.show"));
            assertThat(loaded.problems()).isEmpty();
            written = loaded.script().orElseThrow().distances().stream().map(DistanceRules::table)
                    .collect(Collectors.toMap(DistanceTable::name, table -> table));
        }
        return written.get(name);
    }

    @ParameterizedTest
    @CsvSource({"German, GermanTable", "PerInch, UsTable", "Tokyo, TokyoClass1"})
    void aTableOfTheLanguageAsksWhatTheShippedOneAsks(String own, String shipped) {
        DistanceTable mine = written(own);
        DistanceTable theirs = ShippedTables.named(shipped).orElseThrow();
        Random random = new Random(4);
        Set<Long> numbers = new TreeSet<>();
        int withoutNumber = 0;
        for (int i = 0; i < CASES; i++) {
            FiringCase firing = firing(random);
            Requirement a = mine.evaluate(firing);
            Requirement b = theirs.evaluate(firing);
            assertThat(a.assessmentNeeded()).as("%s", firing).isEqualTo(b.assessmentNeeded());
            same(a.metres(), b.metres(), firing);
            same(a.reducibleToM(), b.reducibleToM(), firing);
            b.metres().ifPresent(metres -> numbers.add(Math.round(metres * 1000)));
            withoutNumber += b.assessmentNeeded() ? 1 : 0;
        }
        // The cases reach both what has a number and what has none.
        assertThat(numbers).hasSizeGreaterThan(5);
        assertThat(withoutNumber).isBetween(CASES / 20, CASES * 19 / 20);
    }

    private static void same(OptionalDouble a, OptionalDouble b, FiringCase firing) {
        assertThat(a.isPresent()).as("%s", firing).isEqualTo(b.isPresent());
        if (b.isPresent()) {
            assertThat(a.getAsDouble()).as("%s", firing).isCloseTo(b.getAsDouble(), within(1e-9));
        }
    }

    private static FiringCase firing(Random random) {
        FiringCase firing = FiringCase.of(ArticleKind.values()[random.nextInt(ArticleKind.values().length)]);
        for (Quantity quantity : Quantity.values()) {
            double[] values = VALUES.get(quantity);
            boolean common = quantity == Quantity.CALIBRE || quantity == Quantity.HEIGHT;
            if (random.nextInt(8) < (common ? 7 : 3)) {
                firing = firing.with(quantity, values[random.nextInt(values.length)]);
            }
        }
        for (Flag flag : Flag.values()) {
            firing = random.nextInt(8) == 0 ? firing.with(flag) : firing;
        }
        if (firing.values().containsKey(Quantity.TILT) && random.nextBoolean()) {
            firing = firing.tilted(firing.values().get(Quantity.TILT), random.nextInt(360));
        }
        if (firing.values().containsKey(Quantity.WIND) && random.nextBoolean()) {
            firing = firing.inWind(random.nextInt(360), firing.values().get(Quantity.WIND));
        }
        return firing.towards(random.nextInt(360));
    }

    /** 1. SprengV, annex 6, nos. 3.3.2 and 3.4.3: 80 % of 120 m is 96 m; 40 % more where it leans by 5 to 10 degrees is 134.4 m. */
    @Test
    void asksTheDistancesThatTheDocumentAsks() {
        FiringCase shell = FiringCase.of(ArticleKind.SHELL).with(Quantity.CALIBRE, 0.100).with(Quantity.HEIGHT, 120);
        assertThat(written("German").evaluate(shell).metres().getAsDouble()).isCloseTo(96, within(1e-9));
        assertThat(written("German").evaluate(shell.tilted(10, 180).towards(180)).metres().getAsDouble()).isCloseTo(134.4, within(1e-9));
        // Oregon OAR 837-012-0840 (3)(a): 70 ft per inch is 0.84 m per mm.
        assertThat(written("PerInch").evaluate(shell).metres().getAsDouble()).isCloseTo(84, within(1e-9));
    }

    @Test
    void quotesTheRuleInTheAuthorsWordsAndAsHisOwn() {
        Requirement asked = written("German").evaluate(FiringCase.of(ArticleKind.FOUNTAIN));
        assertThat(asked.basis()).isEqualTo("keep Ground 20 m for fountain, wheel, flare says \"no. 3.3.1\":"
                + " 1. SprengV, Annex 6 (BGBl. I 2017, 1627), no. 3.3.1 (your own table)");
        assertThat(asked.verification()).isEqualTo(Verification.OWN);
    }

    @Test
    void aTableWithAMistakeIsNotUsed() throws IOException {
        Path file = Files.writeString(project.resolve("s.show"), "show S { separation by Mine }\ndistances Mine {\n  document \"d\"\n"
                + "  keep Shells 0.8 m per mm  for shell\n  then add 40 %  when tlit above 5 deg\n}\n");
        LoadedShow loaded = new ShowLoader().load(file);
        ShowScript script = loaded.script().orElseThrow();
        assertThat(loaded.problems()).extracting(Finding::message)
                .containsExactly("A distance table cannot ask for 'tlit'; did you mean tilt?");
        assertThat(script.distances()).isEmpty();
        assertThat(script.separationTable()).isEmpty();
    }

    @Test
    void aRuleIsNamedOnce() throws IOException {
        Path file = Files.writeString(project.resolve("s.show"), "distances Mine {\n  document \"d\"\n  keep Rest 60 m\n  keep Rest 20 m\n}\n");
        assertThat(new ShowLoader().load(file).problems()).extracting(Finding::message)
                .containsExactly("There is already a rule 'Rest' in this table");
    }

    /** What it excuses is found at the shore, so that is what its author would name. */
    @Test
    void aWaiverMayNameTheAudienceOrAProtectedPlace() throws IOException {
        Path file = Files.writeString(project.resolve("s.show"), "show S { }\nsite Pier { audience Shore along (0 m, 0 m) (9 m, 0 m)"
                + "  protect Tank circle (50 m, 0 m) radius 5 m }\nwaive separation for Shore because \"empty\" by \"A. Inspector\"\n"
                + "waive protect for Tank because \"drained\" by \"A. Inspector\"\n");
        LoadedShow loaded = new ShowLoader().load(file);
        assertThat(loaded.problems()).isEmpty();
        assertThat(loaded.script().orElseThrow().waivers()).extracting(waiver -> waiver.subject().orElseThrow()).containsExactly("Shore", "Tank");
    }

    @Test
    void aShowNamesItsOwnTableOrOneOfTheProgram() throws IOException {
        List<String> found = new ArrayList<>();
        for (String name : List.of("Mine", "GermanTable")) {
            Path file = Files.writeString(project.resolve("s.show"), "show S { separation by " + name + " }\n"
                    + "distances Mine { document \"d\"  keep All 60 m }\n");
            found.add(new ShowLoader().load(file).script().orElseThrow().separationTable().orElseThrow().title());
        }
        assertThat(found).containsExactly("Mine", "1. SprengV Annex 6");
    }
}
