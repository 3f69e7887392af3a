package org.girandole.rules;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.girandole.lang.LanguageRules;
import org.girandole.plan.Finding;
import org.girandole.plan.rules.RuleInfo;
import org.girandole.plan.rules.RuleInfo.Family;
import org.girandole.plan.rules.Rules;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

class RuleFixturesTest {
    /** The language finds these before the planner can; plans without a language reach them, and the planner's tests do so. */
    private static final Set<String> ONLY_WITHOUT_LANGUAGE = Set.of("mark-circular", "mark-unknown", "tempo-impossible",
            "timecode-impossible");

    static List<Fixture> fixtures() {
        return Fixture.all();
    }

    @ParameterizedTest
    @MethodSource("fixtures")
    void findsWhatTheFixtureSaysAndNoMore(Fixture fixture) {
        List<Finding> findings = Checking.findings(fixture.file(), Fixture.ROOT);
        Set<String> spokenOf = fixture.expected().stream().map(Fixture.Expected::rule).collect(Collectors.toSet());
        List<Finding> open = new ArrayList<>(findings.stream().filter(finding -> finding.rule().equals(fixture.rule())
                || spokenOf.contains(finding.rule()) || isLanguage(finding)).toList());
        for (Fixture.Expected expected : fixture.expected()) {
            Finding match = open.stream().filter(finding -> matches(finding, expected, fixture)).findFirst().orElse(null);
            assertThat(match).as("%s expects %s among %s", fixture, expected, words(open)).isNotNull();
            open.remove(match);
            assertThat(match.basis()).as("basis of %s", expected).isNotBlank();
            assertThat(match.remedy()).as("remedy of %s", expected).isNotBlank();
            // A circle of names has no value that could be found or allowed; everything that is not language has.
            if (!isLanguage(match)) {
                assertThat(match.found()).as("found value of %s", expected).isNotBlank();
                assertThat(match.allowed()).as("allowed value of %s", expected).isNotBlank();
            }
        }
        assertThat(words(open)).as("findings that %s does not expect", fixture).isEmpty();
    }

    @ParameterizedTest
    @MethodSource("fixtures")
    void theNameOfAFixtureSaysWhetherItFires(Fixture fixture) {
        assertThat(fixture.fires()).as("%s speaks of %s", fixture, fixture.rule())
                .isEqualTo(fixture.file().getFileName().toString().startsWith("fires"));
    }

    @Test
    void everyRuleHasAFixtureThatFiresAndOneThatDoesNot() {
        List<Fixture> all = fixtures();
        assertThat(Rules.infos().stream().filter(info -> info.family() != Family.LANGUAGE).map(RuleInfo::id)
                .filter(id -> !ONLY_WITHOUT_LANGUAGE.contains(id))).allSatisfy(id -> {
            assertThat(all).as("a firing fixture of %s", id).anyMatch(fixture -> fixture.rule().equals(id) && fixture.fires());
            assertThat(all).as("a silent fixture of %s", id).anyMatch(fixture -> fixture.rule().equals(id) && !fixture.fires());
        });
    }

    @Test
    void everyFixtureIsAboutARuleThatIs() {
        List<String> ids = Stream.concat(Rules.infos().stream(), LanguageRules.ALL.stream()).map(RuleInfo::id).toList();
        assertThat(fixtures()).extracting(Fixture::rule).isSubsetOf(ids);
    }

    private static boolean isLanguage(Finding finding) {
        return Rules.infos().stream().noneMatch(info -> info.id().equals(finding.rule()));
    }

    private static boolean matches(Finding finding, Fixture.Expected expected, Fixture fixture) {
        return finding.rule().equals(expected.rule()) && finding.severity().word().equals(expected.severity())
                && finding.source().line() == expected.line() && finding.source().column() == expected.column()
                && finding.source().file().endsWith(fixture.file().getFileName().toString())
                && finding.message().contains(expected.text());
    }

    private static List<String> words(List<Finding> findings) {
        return findings.stream().map(f -> f.source() + " " + f.severity().word() + " " + f.rule() + ": " + f.message()).toList();
    }
}
