package org.girandole.lang.parsing;

import java.util.HashSet;
import java.util.Set;
import org.eclipse.xtext.nodemodel.ILeafNode;
import org.eclipse.xtext.nodemodel.INode;
import org.eclipse.xtext.nodemodel.SyntaxErrorMessage;
import org.eclipse.xtext.nodemodel.util.NodeModelUtils;
import org.eclipse.xtext.resource.XtextResource;
import org.girandole.lang.LanguageRules;
import org.girandole.lang.compile.Problems;
import org.girandole.lang.compile.Sources;
import org.girandole.plan.rules.RuleInfo;
import org.girandole.plan.script.SourceRef;

/** What the parser could not read. */
public final class SyntaxProblems {
    private static final int MOST = 100;
    private static final int RULE = 3;

    private SyntaxProblems() {
    }

    /** Reports at most 100 places of a file; what comes after so many mostly follows from them. */
    public static void report(XtextResource file, Problems problems, Sources sources) {
        if (file.getParseResult() == null) {
            return;
        }
        Set<Integer> endless = new HashSet<>();
        for (INode node : file.getParseResult().getSyntaxErrors()) {
            if (SyntaxMessages.isEndless(node.getSyntaxErrorMessage())) {
                endless.add(node.getStartLine());
            }
        }
        int count = 0;
        for (INode node : file.getParseResult().getSyntaxErrors()) {
            if (++count > MOST) {
                return;
            }
            report(file, node, problems, sources, endless);
        }
    }

    private static void report(XtextResource file, INode node, Problems problems, Sources sources, Set<Integer> endless) {
        SyntaxErrorMessage error = node.getSyntaxErrorMessage();
        ILeafNode before = visibleBefore(node);
        boolean missing = before != null && before.getEndLine() < node.getStartLine();
        int line = missing ? before.getEndLine() : node.getStartLine();
        if (endless.contains(line) && !SyntaxMessages.isEndless(error)) {
            // A text without its end swallows what should follow; that it is missing is no news.
            return;
        }
        String[] data = error.getIssueData();
        boolean ours = data != null && data.length == SyntaxMessages.DATA;
        String message = error.getMessage();
        if (missing && ours && message.contains(SyntaxMessages.EXPECTED)) {
            message = "At the end of this line " + data[1] + " is missing";
        }
        // Where something is missing at the end of a line, that is the place, not the beginning of the next.
        SourceRef place = sources.of(file, missing ? before : node);
        RuleInfo rule = ours && data[RULE].equals(LanguageRules.UNKNOWN_FIELD.id()) ? LanguageRules.UNKNOWN_FIELD : LanguageRules.SYNTAX;
        problems.report(rule, message).found(ours ? data[0] : "", ours ? data[1] : "")
                .remedy(ours ? data[2] : "see the language reference").at(place);
    }

    private static ILeafNode visibleBefore(INode node) {
        int offset = node.getOffset() - 1;
        while (offset >= 0) {
            ILeafNode leaf = NodeModelUtils.findLeafNodeAtOffset(node.getRootNode(), offset);
            if (leaf == null || !leaf.isHidden()) {
                return leaf;
            }
            offset = leaf.getOffset() - 1;
        }
        return null;
    }
}
