package org.girandole.lang.parsing;

import com.google.inject.Inject;
import java.io.StringReader;
import java.util.Set;
import org.antlr.runtime.ANTLRStringStream;
import org.antlr.runtime.BitSet;
import org.antlr.runtime.IntStream;
import org.antlr.runtime.RecognitionException;
import org.antlr.runtime.Token;
import org.antlr.runtime.TokenStream;
import org.eclipse.xtext.RuleCall;
import org.eclipse.xtext.parser.IParseResult;
import org.eclipse.xtext.parser.antlr.XtextTokenStream;
import org.girandole.lang.parser.antlr.ShowParser;
import org.girandole.lang.parser.antlr.internal.InternalShowParser;
import org.girandole.lang.services.ShowGrammarAccess;

/**
 * A parser that never throws away the word with which the next line begins. When two things are missing at the end of a line, it fails
 * twice at that word, and the second time it would skip it to make sure of getting on; but such a word mostly begins something, so
 * that the parser gets on anyhow, and the next line is read as it stands.
 *
 * <p>Where it reads a part of a script, it stops after an error at all that it would stop at in the whole script, and knows the word that
 * comes next.
 */
public class PatientParser extends ShowParser {
    private static final Set<String> LINE_STARTS = Set.of("at", "cue", "repeat", "play", "section", "hold", "}");

    /** Things that can be missing one after the other before one word: time, places, effect. */
    private static final int PATIENCE = 4;

    @Inject
    private Expectations expectations;

    private String next = "";
    private BitSet around;

    /**
     * Reads a part of a script.
     *
     * @param following the word after it, empty when there is none
     */
    IParseResult parse(RuleCall call, String text, int lookAhead, String following) {
        next = following;
        try {
            return parse(call, new StringReader(text), lookAhead);
        } finally {
            next = "";
        }
    }

    @Override
    protected InternalShowParser createParser(XtextTokenStream stream) {
        Set<String> elements = expectations.elementWords();
        if (around == null) {
            around = Around.script(createTokenStream(createLexer(new ANTLRStringStream("use"))), getGrammarAccess());
        }
        int after = createLexer(new ANTLRStringStream(next)).nextToken().getType();
        return new InternalShowParser(stream, getGrammarAccess()) {
            private int waitingAt = -1;
            private int waited;

            @Override
            public void recover(IntStream input, RecognitionException exception) {
                Token next = stream.LT(1);
                waited = waitingAt == input.index() ? waited + 1 : 0;
                waitingAt = input.index();
                if (waited < PATIENCE && next.getType() != Token.EOF
                        && (LINE_STARTS.contains(next.getText()) || elements.contains(next.getText()))) {
                    state.lastErrorIndex = -1;
                }
                super.recover(input, exception);
            }

            @Override
            public boolean mismatchIsUnwantedToken(IntStream input, int wanted) {
                return super.mismatchIsUnwantedToken(input, wanted) || input.LA(2) == Token.EOF && after == wanted;
            }

            @Override
            protected BitSet computeErrorRecoverySet() {
                return super.computeErrorRecoverySet().or(around);
            }
        };
    }

    /** Reads off the parser what may come after a part of a script. */
    private static final class Around extends InternalShowParser {
        private BitSet first;

        private Around(TokenStream stream, ShowGrammarAccess grammar) {
            super(stream, grammar);
        }

        static BitSet script(TokenStream anyPart, ShowGrammarAccess grammar) {
            Around parser = new Around(anyPart, grammar);
            // As if only trying: nothing is built.
            parser.state.backtracking = 1;
            try {
                parser.ruleScript();
            } catch (RecognitionException e) {
                throw new IllegalStateException("A parser that only tries reports nothing", e);
            }
            return parser.first;
        }

        @Override
        protected void pushFollow(BitSet follow) {
            first = first == null ? follow : first;
            super.pushFollow(follow);
        }
    }
}
