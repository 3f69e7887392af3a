package org.girandole.lang.parsing;

import com.google.inject.Inject;
import com.google.inject.Singleton;
import java.util.HashSet;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.antlr.runtime.CharStream;
import org.antlr.runtime.CommonToken;
import org.antlr.runtime.MismatchedTokenException;
import org.antlr.runtime.RecognitionException;
import org.antlr.runtime.Token;
import org.eclipse.emf.ecore.EObject;
import org.eclipse.xtext.AbstractRule;
import org.eclipse.xtext.CrossReference;
import org.eclipse.xtext.GrammarUtil;
import org.eclipse.xtext.RuleCall;
import org.eclipse.xtext.diagnostics.Diagnostic;
import org.eclipse.xtext.nodemodel.INode;
import org.eclipse.xtext.nodemodel.SyntaxErrorMessage;
import org.eclipse.xtext.parser.antlr.ISyntaxErrorMessageProvider;
import org.girandole.lang.LanguageRules;
import org.girandole.lang.compile.Joints;
import org.girandole.lang.compile.Signs;
import org.girandole.lang.compile.Words;
import org.girandole.lang.scoping.Kind;
import org.girandole.lang.services.ShowGrammarAccess;
import org.girandole.lang.show.CueLine;
import org.girandole.lang.show.GroupDef;
import org.girandole.lang.show.Named;
import org.girandole.lang.show.SiteDef;
import org.girandole.lang.show.WindField;
import org.girandole.plan.Finding;
import org.girandole.plan.rules.RuleInfo;

/**
 * What the parser could not read, in the user's words. Each message carries what was found, what was expected what would mend it,
 * and the id of its rule, in this order, as its data.
 */
@Singleton
public class SyntaxMessages implements ISyntaxErrorMessageProvider {
    private static final Map<String, String> NAMELESS = Map.of("ScoreDef", "score", "RepeatBlock", "repetition", "TempoField", "tempo",
            "ReleaseDef", "release");

    /** Number of data of a message. */
    static final int DATA = 4;
    /** What a message of something expected says. */
    static final String EXPECTED = " stands where ";

    private final Expectations expectations;
    private final Set<String> keywords;

    @Inject
    public SyntaxMessages(ShowGrammarAccess grammar, Expectations expectations) {
        this.expectations = expectations;
        this.keywords = new HashSet<>(GrammarUtil.getAllKeywords(grammar.getGrammar()));
    }

    /** Whether it says what is wanted at the very place, a kind of thing or one word; and not only with which words a block goes on. */
    public static boolean isExact(Finding problem) {
        return (problem.message().contains(EXPECTED) || problem.allowed().equals(Joints.COMMA))
                && (problem.allowed().startsWith("a ") || problem.allowed().startsWith("an ") || problem.allowed().startsWith("'"));
    }

    @Override
    public SyntaxErrorMessage getSyntaxErrorMessage(IValueConverterErrorContext context) {
        return message(context.getDefaultMessage(), "", "", "see the message");
    }

    @Override
    public SyntaxErrorMessage getSyntaxErrorMessage(IParserErrorContext context) {
        RecognitionException exception = context.getRecognitionException();
        if (exception == null || exception.token == null) {
            // An error of the lexer: SyntaxProblems sees from the text itself what it is.
            return new SyntaxErrorMessage(context.getDefaultMessage(), Diagnostic.SYNTAX_DIAGNOSTIC);
        }
        String found = exception.token.getType() == Token.EOF ? "" : exception.token.getText();
        String expected = expected(context, exception);
        if (found.isEmpty()) {
            return message("The script ends where " + expected + " is expected", "the end of the script", expected, remedy(context, expected));
        }
        if (found.equals("at") && context.getCurrentContext() instanceof WindField) {
            return message("The wind does not say where it comes from, and everything hangs on that", "wind at a speed", "where the wind comes from, and its speed",
                    "write it as 'wind from 240 deg at 5 m/s', in degrees clockwise from +y");
        }
        if (expected.equals(Expectations.CLOSING_BRACE) && opensElement(found)) {
            return message(block(context.getCurrentContext()) + " is not closed before '" + found + "'", found, expected,
                    "write } where it ends");
        }
        if (Joints.is(found) && joinsPositions(context.getCurrentContext(), expected)) {
            return message(Joints.message(found), found, Joints.COMMA, Joints.WRITE_COMMA);
        }
        if (expected.equals(Expectations.CLOSING_BRACE) && isWord(found)) {
            String block = block(context.getCurrentContext());
            return message(LanguageRules.UNKNOWN_FIELD, "'" + found + "' is nothing that can be said in "
                    + Character.toLowerCase(block.charAt(0)) + block.substring(1), found, "another line of the block, or }",
                    "leave it out, or put it where it belongs");
        }
        if (expected.equals(Expectations.NAME) && isWord(found)) {
            return message("'" + found + "' is a word of the language, and here stands a name", found, expected,
                    "to use it as a name, write ^" + found);
        }
        if (isDecimalComma(exception.token)) {
            return message("Here a number is written with a comma", found, "a point", "write a point in its place");
        }
        return message("'" + Words.shown(found) + "'" + EXPECTED + expected + " is expected", Words.shown(found), expected,
                Signs.remedy(found).filter(better -> expected.startsWith("a number") || !isAssigning(found)).orElseGet(() -> remedy(context, expected)));
    }

    private String expected(IParserErrorContext context, RecognitionException exception) {
        if (exception instanceof MismatchedTokenException mismatch && mismatch.expecting >= 0
                && mismatch.expecting < context.getTokenNames().length) {
            return expectations.token(context.getTokenNames()[mismatch.expecting]);
        }
        if (mismatchEnd(exception)) {
            return expectations.rule("Element");
        }
        return reference(context.getCurrentNode()).or(() -> times(context.getCurrentContext())).or(() -> rule(context.getCurrentNode()).map(AbstractRule::getName)
                .map(expectations::rule)).orElse("another word");
    }

    /** What a name is wanted for, where the parser is about to read one. */
    private Optional<String> reference(INode node) {
        return node != null && node.getGrammarElement() instanceof RuleCall call && call.getRule().getName().equals("Name")
                && call.eContainer() instanceof CrossReference ? expectations.reference(GrammarUtil.containingAssignment(call)) : Optional.empty();
    }

    /** Where a value is expected they are habit; anywhere else nobody knows what they were to be. */
    private static boolean isAssigning(String found) {
        return found.equals(":") || found.equals("=");
    }

    /** A comma with digits on both sides and no space between. */
    private static boolean isDecimalComma(Token token) {
        if (!(token instanceof CommonToken comma) || !",".equals(token.getText())) {
            return false;
        }
        int at = comma.getStartIndex();
        CharStream text = comma.getInputStream();
        return at > 0 && at + 1 < text.size() && Character.isDigit(text.substring(at - 1, at - 1).charAt(0))
                && Character.isDigit(text.substring(at + 1, at + 1).charAt(0));
    }

    /** After the positions of a cue, where its count or effect should begin, and after those of a group. */
    private static boolean joinsPositions(EObject context, String expected) {
        if (context instanceof SiteDef site) {
            return expected.equals(Expectations.CLOSING_BRACE) && !site.getFields().isEmpty()
                    && site.getFields().get(site.getFields().size() - 1) instanceof GroupDef;
        }
        return context instanceof CueLine cue && cue.getPlaces() != null && cue.getCount() == null && cue.getEffect() == null;
    }

    /** Between a count and its effect. */
    private static Optional<String> times(EObject context) {
        return context instanceof CueLine cue && cue.getCount() != null ? Optional.of("'x'") : Optional.empty();
    }

    private static boolean mismatchEnd(RecognitionException exception) {
        return exception instanceof MismatchedTokenException mismatch && mismatch.expecting == Token.EOF;
    }

    private static Optional<AbstractRule> rule(INode node) {
        for (INode n = node; n != null; n = n.getParent()) {
            if (n.getGrammarElement() instanceof RuleCall call) {
                return Optional.of(call.getRule());
            }
            if (n.getGrammarElement() instanceof AbstractRule rule) {
                return Optional.of(rule);
            }
        }
        return Optional.empty();
    }

    private boolean isWord(String found) {
        return keywords.contains(found) && Character.isLetter(found.charAt(0));
    }

    private boolean opensElement(String found) {
        return expectations.elementWords().contains(found);
    }

    private static String block(EObject context) {
        for (EObject o = context; o != null; o = o.eContainer()) {
            String nameless = NAMELESS.get(o.eClass().getName());
            if (nameless != null) {
                return "The block of the " + nameless;
            }
            if (o instanceof Named named && named.getName() != null && !(o instanceof CueLine)) {
                Optional<String> kind = Kind.of(named).map(Kind::words).map(words -> words.substring(words.indexOf(' ') + 1));
                return "The block of the " + kind.orElse("definition") + " '" + named.getName() + "'";
            }
        }
        return "The block above";
    }

    private static String remedy(IParserErrorContext context, String expected) {
        for (EObject o = context.getCurrentContext(); o != null; o = o.eContainer()) {
            if (o instanceof CueLine) {
                return "a cue is written: at TIME PLACES EFFECT";
            }
        }
        return "write " + expected;
    }

    private static SyntaxErrorMessage message(String text, String found, String expected, String remedy) {
        return message(LanguageRules.SYNTAX, text, found, expected, remedy);
    }

    private static SyntaxErrorMessage message(RuleInfo rule, String text, String found, String expected, String remedy) {
        return new SyntaxErrorMessage(text, Diagnostic.SYNTAX_DIAGNOSTIC, new String[] {found, expected, remedy, rule.id()});
    }
}
