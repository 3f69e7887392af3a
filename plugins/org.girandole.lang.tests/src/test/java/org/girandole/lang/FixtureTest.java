package org.girandole.lang;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;
import org.girandole.plan.Finding;
import org.girandole.plan.rules.RuleInfo;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** What is wrong with a script is said at the smallest text, once, in the user's words. */
class FixtureTest {
    /** No text file can be its own fixture for this; {@link BadInputTest} makes the bytes. */
    private static final String BYTES = "not-utf8";
    private static final List<String> WORDS_OF_THE_PARSER = List.of("mismatched", "viable", "extraneous", "RULE_", "EOF", "null", "token");

    private final ShowLoader loader = new ShowLoader();

    static List<Fixture> fixtures() {
        return Fixture.all();
    }

    @ParameterizedTest
    @MethodSource("fixtures")
    void saysWhatTheFixtureExpectsAndNoMore(Fixture fixture) {
        LoadedShow loaded = loader.load(fixture.file());
        assertThat(loaded.problems()).extracting(FixtureTest::words).containsExactlyElementsOf(fixture.expected(loaded));
    }

    @ParameterizedTest
    @MethodSource("fixtures")
    void saysHowToMendIt(Fixture fixture) {
        assertThat(loader.load(fixture.file()).problems()).allSatisfy(problem -> {
            assertThat(problem.remedy()).isNotBlank();
            assertThat(problem.basis()).isNotBlank();
            assertThat(problem.message() + problem.remedy() + problem.found() + problem.allowed()).doesNotContain(WORDS_OF_THE_PARSER);
        });
    }

    @Test
    void everyRuleIsBrokenByAFixture() {
        Set<String> broken = new TreeSet<>(Set.of(BYTES));
        for (Fixture fixture : fixtures()) {
            loader.load(fixture.file()).problems().forEach(problem -> broken.add(problem.rule()));
        }
        assertThat(broken).isEqualTo(LanguageRules.ALL.stream().map(RuleInfo::id).collect(Collectors.toCollection(TreeSet::new)));
    }

    private static String words(Finding problem) {
        return problem.source() + "+" + problem.source().length() + " " + problem.severity().word() + " " + problem.rule() + ": "
                + problem.message();
    }
}
