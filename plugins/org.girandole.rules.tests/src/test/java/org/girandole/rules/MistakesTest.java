package org.girandole.rules;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.girandole.plan.Finding;
import org.girandole.plan.rules.Rule;
import org.girandole.plan.rules.Rules;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** The example of mistakes: every mistake is found where the comment above it says, and nothing else is. */
class MistakesTest {
    private static final Path ROOT = Path.of("../../examples/mistakes");
    private static final Pattern COMMENT = Pattern.compile("\\s*// mistake: (.+)");

    static List<Path> scripts() throws IOException {
        try (Stream<Path> files = Files.list(ROOT)) {
            return files.filter(file -> file.toString().endsWith(".show")).sorted().toList();
        }
    }

    @ParameterizedTest
    @MethodSource("scripts")
    void everyMistakeIsFoundOnItsLineAndNothingElse(Path script) throws IOException {
        assertThat(found(script)).isEqualTo(announced(script));
    }

    @Test
    void everyRuleIsBroken() throws IOException {
        Set<String> broken = new TreeSet<>();
        for (Path script : scripts()) {
            Checking.findings(script, ROOT).forEach(finding -> broken.add(finding.rule()));
        }
        assertThat(broken).containsAll(Rules.all().stream().map(Rule::info).map(info -> info.id()).toList());
    }

    private static Set<String> found(Path script) {
        return Checking.findings(script, ROOT).stream().filter(finding -> !finding.waived())
                .map(MistakesTest::place).collect(Collectors.toCollection(TreeSet::new));
    }

    private static String place(Finding finding) {
        return "line " + finding.source().line() + ": " + finding.rule();
    }

    private static Set<String> announced(Path script) throws IOException {
        Set<String> announced = new TreeSet<>();
        List<String> lines = Files.readAllLines(script, StandardCharsets.UTF_8);
        for (int i = 0; i < lines.size(); i++) {
            Matcher comment = COMMENT.matcher(lines.get(i));
            if (comment.matches()) {
                for (String rule : comment.group(1).split(",\\s*")) {
                    announced.add("line " + (i + 2) + ": " + rule);
                }
            }
        }
        return announced;
    }
}
