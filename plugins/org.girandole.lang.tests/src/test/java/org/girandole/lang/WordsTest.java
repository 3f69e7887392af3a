package org.girandole.lang;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Stream;
import org.eclipse.xtext.EcoreUtil2;
import org.eclipse.xtext.GrammarUtil;
import org.eclipse.xtext.Keyword;
import org.girandole.lang.services.ShowGrammarAccess;
import org.girandole.plan.rules.RuleInfo;
import org.girandole.plan.rules.Rules;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** The words of the language get in nobody's way. */
class WordsTest {
    private static final ShowGrammarAccess GRAMMAR = new ShowStandaloneSetup().createInjectorAndDoEMFRegistration()
            .getInstance(ShowGrammarAccess.class);
    /** Words that stand between a rule's id or a field and what follows it. */
    private static final Set<String> BETWEEN = Set.of("as", "at", "because", "column", "for", "is");

    private final ShowLoader loader = new ShowLoader();

    @TempDir
    private Path project;

    static List<String> softWords() {
        return Stream.of(GRAMMAR.getSoftWordRule(), GRAMMAR.getTableWordRule())
                .flatMap(rule -> EcoreUtil2.eAllOfType(rule, Keyword.class).stream()).map(Keyword::getValue).toList();
    }

    static List<String> ruleIds() {
        return Stream.concat(Rules.infos().stream(), LanguageRules.ALL.stream()).map(RuleInfo::id).toList();
    }

    private List<String> problems(String text) throws IOException {
        return loader.load(Files.writeString(project.resolve("words.show"), text)).problems().stream().map(p -> p.rule() + ": " + p.message())
                .toList();
    }

    @ParameterizedTest
    @MethodSource("softWords")
    void aSoftWordIsANameEverywhere(String word) throws IOException {
        assertThat(problems("site Pier { position " + word + " at (0 m, 0 m)  group Ends = " + word + " }\nshell " + word + " { igniter " + word
                + " }\nigniter " + word + " { }\nfigure Run(" + word + ") { at " + word + " Ends Other }\ncomet Other like " + word
                + " { }\nsoundtrack " + word + " { mark " + word + " at 0:10 }\nscore " + word + " in slot 0 {\n  at " + word + " " + word
                + " " + word + "\n  play Run(1 s) at " + word + " + 1 s\n}\n")).isEmpty();
    }

    @ParameterizedTest
    @MethodSource("ruleIds")
    void aWaiverCanNameEveryRule(String id) throws IOException {
        assertThat(problems("waive " + id + " because \"agreed\" by \"A. Inspector\"\nrule " + id + " is error\n")).isEmpty();
    }

    @Test
    void everyWordOfTheLanguageCanBePartOfARulesId() {
        Set<String> any = new TreeSet<>();
        Stream.of(GRAMMAR.getAnyWordRule(), GRAMMAR.getFieldWordRule(), GRAMMAR.getSoftWordRule(), GRAMMAR.getTableWordRule(),
                GRAMMAR.getTimeUnitRule(), GRAMMAR.getEffectWordRule())
                .forEach(rule -> EcoreUtil2.eAllOfType(rule, Keyword.class).forEach(keyword -> any.add(keyword.getValue())));
        Set<String> words = new TreeSet<>(GrammarUtil.getAllKeywords(GRAMMAR.getGrammar()));
        words.removeIf(word -> !Character.isLetter(word.charAt(0)) || BETWEEN.contains(word));
        assertThat(any).containsAll(words);
    }

    @Test
    void aWordOfTheLanguageIsANameWhenItIsEscaped() throws IOException {
        assertThat(problems("shell ^score { rise 2 s }\nshell Other like ^score { }\n")).isEmpty();
    }

    @Test
    void unitsAreNames() throws IOException {
        assertThat(problems("site Pier { position m at (0 m, 0 m)  position deg at (1 m, 0 m) }\nshell mm { calibre 75 mm }\n"
                + "soundtrack T { length 1:00 }\nscore T in slot 0 {\n  at 0 m, deg mm\n  at 2 s m mm\n}\n")).isEmpty();
    }
}
