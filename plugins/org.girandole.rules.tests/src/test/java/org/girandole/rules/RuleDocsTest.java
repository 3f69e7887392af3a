package org.girandole.rules;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.util.ArrayList;
import java.util.Iterator;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.girandole.lang.check.ShowPipeline;
import org.girandole.plan.Finding;
import org.girandole.plan.Severity;
import org.girandole.plan.rules.RuleInfo;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** The pages about rules say what the rules do: their examples are fixtures, and what is quoted is what is found. */
class RuleDocsTest {
    private static final Path DOCS = Path.of("../../docs/rules");
    private static final List<String> SECTIONS = List.of("## What it checks", "## Why it matters", "## The limit and where it comes from",
            "## How to mend it", "## How to live with it");
    private static final Pattern BLOCK = Pattern.compile("```(show|text)\\n(.*?)```", Pattern.DOTALL);

    static List<RuleInfo> rules() {
        return ShowPipeline.rules();
    }

    static List<RuleInfo> rulesWithExample() {
        return rules().stream().filter(rule -> example(rule).isPresent()).toList();
    }

    static List<RuleInfo> waivableRules() {
        return rulesWithExample().stream().filter(rule -> !page(rule).contains("It cannot be waived.")).toList();
    }

    @ParameterizedTest
    @MethodSource("rules")
    void hasAPageThatSaysEverything(RuleInfo rule) {
        String page = page(rule);
        assertThat(page).startsWith("# " + rule.id() + "\n\n" + sentence(rule.summary()) + "\n\nFamily: "
                + rule.family().name().toLowerCase(Locale.ROOT) + ". Severity: " + rule.severity().word()
                + (rule.severity() == Severity.ERROR ? "." : ", unless the script raises it.") + "\n");
        assertThat(page).containsSubsequence(SECTIONS);
    }

    @ParameterizedTest
    @MethodSource("rulesWithExample")
    void itsExampleIsAFixtureAndItsFindingIsFound(RuleInfo rule) {
        Fixture fixture = example(rule).orElseThrow();
        List<String> blocks = blocks(page(rule));
        assertThat(blocks).as("example, finding and waiver on the page of %s", rule.id()).hasSizeGreaterThanOrEqualTo(2);
        assertThat(standInOrder(blocks.get(0).lines().toList(), fixture.script()))
                .as("the example on the page of %s stands in %s", rule.id(), fixture).isTrue();
        assertThat(Checking.findings(fixture.file(), Fixture.ROOT)).extracting(RuleDocsTest::words)
                .as("what the page of %s quotes", rule.id()).contains(blocks.get(1));
    }

    @ParameterizedTest
    @MethodSource("waivableRules")
    void itsWaiverHolds(RuleInfo rule, @TempDir Path project) throws IOException {
        Fixture fixture = example(rule).orElseThrow();
        for (String shared : List.of("field.show", "tone.wav", "hits.flac")) {
            Files.copy(Fixture.ROOT.resolve(shared), project.resolve(shared), StandardCopyOption.REPLACE_EXISTING);
        }
        Path script = Files.createDirectory(project.resolve(rule.id())).resolve("waived.show");
        try (Stream<Path> beside = Files.list(Fixture.ROOT.resolve(rule.id()))) {
            for (Path recording : beside.filter(file -> file.toString().endsWith(".flac")).toList()) {
                Files.copy(recording, script.resolveSibling(recording.getFileName()));
            }
        }
        List<String> lines = new ArrayList<>(fixture.script());
        lines.addAll(blocks(page(rule)).get(2).lines().toList());
        Files.write(script, lines, StandardCharsets.UTF_8);
        List<Finding> findings = Checking.findings(script, project);
        assertThat(findings).filteredOn(finding -> finding.rule().equals(rule.id())).as("findings of %s", rule.id())
                .anyMatch(Finding::waived);
        assertThat(findings).extracting(Finding::rule).as("rules found").doesNotContain("waiver-unused");
    }

    @Test
    void theIndexListsEveryRuleOnce() throws IOException {
        List<String> expected = rules().stream().map(rule -> "| [" + rule.id() + "](" + rule.id() + ".md) | " + rule.severity().word()
                + " | " + sentence(rule.summary()) + " |").toList();
        List<String> rows = Files.readAllLines(DOCS.resolve("README.md"), StandardCharsets.UTF_8).stream()
                .filter(line -> line.startsWith("| [")).toList();
        assertThat(rows).containsExactlyInAnyOrderElementsOf(expected);
    }

    @Test
    void noPageIsLeftOverFromARuleThatIsGone() throws IOException {
        try (Stream<Path> pages = Files.list(DOCS)) {
            assertThat(pages.map(page -> page.getFileName().toString()).filter(name -> !name.equals("README.md")))
                    .containsExactlyInAnyOrderElementsOf(rules().stream().map(rule -> rule.id() + ".md").toList());
        }
    }

    @Test
    void noTwoRulesShareAnId() {
        assertThat(rules()).extracting(RuleInfo::id).doesNotHaveDuplicates();
    }

    private static Optional<Fixture> example(RuleInfo rule) {
        Path file = Fixture.ROOT.resolve(rule.id()).resolve("fires.show");
        return Files.exists(file) ? Optional.of(Fixture.read(file)) : Optional.empty();
    }

    private static String page(RuleInfo rule) {
        try {
            return Files.readString(DOCS.resolve(rule.id() + ".md"), StandardCharsets.UTF_8);
        } catch (IOException e) {
            throw new AssertionError("Rule " + rule.id() + " has no page docs/rules/" + rule.id() + ".md", e);
        }
    }

    private static List<String> blocks(String page) {
        Matcher matcher = BLOCK.matcher(page);
        List<String> blocks = new ArrayList<>();
        while (matcher.find()) {
            blocks.add(matcher.group(2));
        }
        return blocks;
    }

    private static boolean standInOrder(List<String> lines, List<String> script) {
        Iterator<String> rest = script.iterator();
        for (String line : lines) {
            boolean there = false;
            while (!there && rest.hasNext()) {
                there = rest.next().equals(line);
            }
            if (!there) {
                return false;
            }
        }
        return true;
    }

    private static String words(Finding finding) {
        return finding.severity().word() + " " + finding.rule() + ": " + finding.message() + "\n  found:   " + finding.found()
                + "\n  allowed: " + finding.allowed() + "\n  basis:   " + finding.basis() + "\n  remedy:  " + finding.remedy() + "\n";
    }

    private static String sentence(String summary) {
        return summary.endsWith(".") ? summary : summary + ".";
    }
}
