package org.girandole.lang.parsing;

import org.eclipse.xtext.nodemodel.INode;
import org.eclipse.xtext.resource.XtextResource;
import org.girandole.lang.LanguageRules;
import org.girandole.lang.compile.Problems;
import org.girandole.lang.compile.Sources;

/** What the parser could not read. */
public final class SyntaxProblems {
    private static final int MOST = 100;

    private SyntaxProblems() {
    }

    /** Reports at most 100 places of a file; the rest follows from them more often than not. */
    public static void report(XtextResource file, Problems problems, Sources sources) {
        if (file.getParseResult() == null) {
            return;
        }
        int count = 0;
        for (INode node : file.getParseResult().getSyntaxErrors()) {
            if (++count > MOST) {
                return;
            }
            problems.report(LanguageRules.SYNTAX, node.getSyntaxErrorMessage().getMessage()).remedy("see the language reference")
                    .at(sources.of(file, node));
        }
    }
}
