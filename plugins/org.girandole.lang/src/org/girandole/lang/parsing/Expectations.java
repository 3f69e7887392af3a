package org.girandole.lang.parsing;

import com.google.inject.Inject;
import com.google.inject.Singleton;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.eclipse.xtext.AbstractRule;
import org.eclipse.xtext.Assignment;
import org.eclipse.xtext.GrammarUtil;
import org.girandole.lang.compile.Vocabulary;
import org.girandole.lang.compile.Words;
import org.girandole.lang.services.ShowGrammarAccess;

/** What the grammar expects, in the user's words. */
@Singleton
final class Expectations {
    static final String NAME = "a name";
    static final String CLOSING_BRACE = "'}'";
    /** A message with more words than this is not read. */
    private static final int MOST_WORDS = 12;

    private static final Map<String, String> TOKENS = Map.of("RULE_ID", NAME, "RULE_STRING", "a text in double quotes", "RULE_NATURAL",
            "a whole number", "RULE_TIME", "a time, such as 0:12.5", "RULE_SCIENTIFIC", "a number");
    private static final Map<String, String> RULES = Map.ofEntries(Map.entry("Name", NAME), Map.entry("TableName", NAME),
            Map.entry("Number", "a number"), Map.entry("Quantity", "a number with its unit"), Map.entry("Angle", "an angle, such as 25 deg"),
            Map.entry("Places", "a position"), Map.entry("PlaceRange", "a position"),
            Map.entry("TimeExpr", "a time, such as Swell, bar 9 or 0:12.5"), Map.entry("Anchor", "a time, such as Swell, bar 9 or 0:12.5"),
            Map.entry("Duration", "a length of time, such as 1/2 beat"), Map.entry("Step", "a length of time, such as 1/2 beat"),
            Map.entry("SignedStep", "a length of time, such as 1/2 beat"), Map.entry("TimeUnit", "a unit of time"),
            Map.entry("Point", "a point, such as (10 m, 0 m)"), Map.entry("Date", "a date, such as 2027-06-19"),
            Map.entry("Division", "a hazard class, such as 1.3G"), Map.entry("RuleId", "the name of a rule"),
            Map.entry("FieldWords", "the name of a field"), Map.entry("UnitRef", "a pin or tube, such as M1/3"),
            Map.entry("TubeRun", "tubes, such as 10 tubes 75 mm"), Map.entry("Limit", "a limit, such as 4 igniters per pin"),
            Map.entry("Unit", "a unit"), Map.entry("UnitWord", "a unit"), Map.entry("Parameter", NAME), Map.entry("Argument", "a value"),
            Map.entry("CueLine", "an effect"));

    private static final Map<String, String> REFERENCES = Map.ofEntries(Map.entry("effect", "an effect"), Map.entry("like", "an effect"),
            Map.entry("first", "a position"), Map.entry("last", "a position"), Map.entry("position", "a position"),
            Map.entry("figure", "a figure"), Map.entry("soundtrack", "a soundtrack"), Map.entry("lot", "a lot"), Map.entry("wire", "a wire"), Map.entry("cue", "a cue"),
            Map.entry("table", "a table"), Map.entry("owner", "a pin or tube, such as M1/3"));

    private final ShowGrammarAccess grammar;
    private Set<String> elementWords;

    @Inject
    Expectations(ShowGrammarAccess grammar) {
        this.grammar = grammar;
    }

    /** A token by its name in the parser: a keyword in quotes, or a terminal. */
    String token(String name) {
        return TOKENS.getOrDefault(name, name);
    }

    /** A rule by its name: what it stands for, else the words it can begin with. */
    String rule(String name) {
        String known = RULES.get(name);
        if (known != null) {
            return known;
        }
        AbstractRule rule = GrammarUtil.findRuleForName(grammar.getGrammar(), name);
        Set<String> words = rule == null ? Set.of() : Vocabulary.first(rule);
        return words.isEmpty() ? "another word" : words.size() > MOST_WORDS ? "another word" : Words.or(words);
    }

    /** What the name in an assignment is a name of. */
    Optional<String> reference(Assignment assignment) {
        return Optional.ofNullable(assignment).map(a -> REFERENCES.get(a.getFeature()));
    }

    /** The words that begin the parts of a script. */
    Set<String> elementWords() {
        if (elementWords == null) {
            elementWords = Vocabulary.first(grammar.getElementRule());
        }
        return elementWords;
    }
}
