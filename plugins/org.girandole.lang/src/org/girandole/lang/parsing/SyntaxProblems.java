package org.girandole.lang.parsing;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import org.eclipse.xtext.nodemodel.ILeafNode;
import org.eclipse.xtext.nodemodel.INode;
import org.eclipse.xtext.nodemodel.SyntaxErrorMessage;
import org.eclipse.xtext.resource.XtextResource;
import org.girandole.lang.LanguageRules;
import org.girandole.lang.compile.Problems;
import org.girandole.lang.compile.Sources;
import org.girandole.lang.compile.Words;
import org.girandole.plan.rules.RuleInfo;

/** What the parser could not read. */
public final class SyntaxProblems {
    private static final int MOST = 100;
    private static final int FOUND = 0;
    private static final int EXPECTED = 1;
    private static final int REMEDY = 2;
    private static final int RULE = 3;

    private SyntaxProblems() {
    }

    /** Reports at most 100 places of a file; what comes after so many mostly follows from them. */
    public static void report(XtextResource file, Problems problems, Sources sources) {
        if (file.getParseResult() == null) {
            return;
        }
        if (!file.getParseResult().hasSyntaxErrors()) {
            return;
        }
        // Each look for errors goes through all of the file.
        List<INode> errors = new ArrayList<>();
        file.getParseResult().getSyntaxErrors().forEach(errors::add);
        Set<Integer> lexical = new HashSet<>();
        for (INode node : errors) {
            if (isLexical(node)) {
                lexical.add(node.getStartLine());
            }
        }
        int count = 0;
        for (INode node : errors) {
            if (++count > MOST) {
                return;
            }
            if (isLexical(node)) {
                lexical(file, node, problems, sources);
            } else {
                grammatical(file, node, node instanceof ILeafNode ? Leaves.wordBefore(node) : null, problems, sources, lexical);
            }
        }
    }

    /** Whether an error is of the characters of one token, not of the order of tokens. */
    private static boolean isLexical(INode node) {
        String[] data = node.getSyntaxErrorMessage().getIssueData();
        return data == null || data.length != SyntaxMessages.DATA;
    }

    private static void lexical(XtextResource file, INode node, Problems problems, Sources sources) {
        String text = node.getText();
        if (node.getSyntaxErrorMessage().getMessage().equals(DepthLexer.TOO_DEEP)) {
            problems.report(LanguageRules.SYNTAX, DepthLexer.TOO_DEEP).found("deeper nesting", "at most " + DepthLexer.DEEPEST + " levels")
                    .remedy("close blocks that should be closed, or use a figure").at(sources.of(file, node));
        } else if (text.startsWith("\"")) {
            problems.report(LanguageRules.SYNTAX, "This text has no end").found("an opening quote", "a closing quote on the same line")
                    .remedy("write the closing quote").at(sources.of(file, node));
        } else if (text.startsWith("/*")) {
            problems.report(LanguageRules.SYNTAX, "This comment has no end").found("/*", "*/").remedy("write */ where the comment ends")
                    .at(sources.of(file, node));
        } else {
            problems.report(LanguageRules.SYNTAX, "'" + Words.shown(text) + "' is neither a number nor a time nor a word")
                    .found(Words.shown(text), "a number such as 2.5, or a time such as 0:12.5").remedy("check what is written here")
                    .at(sources.of(file, node));
        }
    }

    private static void grammatical(XtextResource file, INode node, ILeafNode before, Problems problems, Sources sources,
            Set<Integer> lexical) {
        SyntaxErrorMessage error = node.getSyntaxErrorMessage();
        boolean missing = before != null && before.getEndLine() < node.getStartLine();
        if (lexical.contains(missing ? before.getEndLine() : node.getStartLine())) {
            // A text without its end swallows what should follow; that it is missing is no news.
            return;
        }
        String[] data = error.getIssueData();
        String message = missing && error.getMessage().contains(SyntaxMessages.EXPECTED)
                ? "At the end of this line " + data[EXPECTED] + " is missing" : error.getMessage();
        RuleInfo rule = data[RULE].equals(LanguageRules.UNKNOWN_FIELD.id()) ? LanguageRules.UNKNOWN_FIELD : LanguageRules.SYNTAX;
        // Where something is missing at the end of a line, that is the place, not the beginning of the next.
        problems.report(rule, message).found(data[FOUND], data[EXPECTED]).remedy(data[REMEDY]).at(sources.of(file, missing ? before : node));
    }
}
