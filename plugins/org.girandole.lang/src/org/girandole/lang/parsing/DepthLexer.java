package org.girandole.lang.parsing;

import org.antlr.runtime.CharStream;
import org.antlr.runtime.CommonToken;
import org.antlr.runtime.Token;
import org.girandole.lang.parser.antlr.internal.InternalShowLexer;

/**
 * Keeps blocks from being nested so deeply that the parser, which goes down with them, runs out of stack. What is too deep becomes
 * space between tokens; its first brace is an error of its own.
 */
public class DepthLexer extends InternalShowLexer {
    /** Deeper than any score needs: score, section, repeat in repeat. */
    static final int DEEPEST = 40;
    /** What is said of the first brace that is too deep. */
    static final String TOO_DEEP = "Blocks are nested more than " + DEEPEST + " deep here";

    private int depth;
    private Token tooDeep;

    @Override
    public void setCharStream(CharStream input) {
        depth = 0;
        tooDeep = null;
        super.setCharStream(input);
    }

    @Override
    public Token nextToken() {
        Token token = super.nextToken();
        int brace = brace(token);
        if (brace > 0) {
            depth++;
        }
        boolean deep = depth > DEEPEST;
        if (brace < 0 && depth > 0) {
            depth--;
        }
        if (deep && token.getType() != Token.EOF && token.getType() != Token.INVALID_TOKEN_TYPE) {
            if (tooDeep == null) {
                tooDeep = token;
                token.setType(Token.INVALID_TOKEN_TYPE);
                token.setChannel(Token.HIDDEN_CHANNEL);
            } else {
                token.setType(RULE_WS);
            }
        }
        return token;
    }

    private static int brace(Token token) {
        if (!(token instanceof CommonToken common) || common.getStartIndex() != common.getStopIndex()) {
            return 0;
        }
        String text = common.getText();
        return "{".equals(text) ? 1 : "}".equals(text) ? -1 : 0;
    }

    @Override
    public String getErrorMessage(Token invalid) {
        return invalid == tooDeep ? TOO_DEEP : super.getErrorMessage(invalid);
    }
}
