package org.girandole.lang.validation;

import com.google.inject.Inject;
import java.util.ArrayList;
import java.util.List;
import org.eclipse.emf.ecore.resource.Resource;
import org.eclipse.xtext.diagnostics.Severity;
import org.eclipse.xtext.nodemodel.ICompositeNode;
import org.eclipse.xtext.nodemodel.util.NodeModelUtils;
import org.eclipse.xtext.resource.XtextResource;
import org.eclipse.xtext.util.CancelIndicator;
import org.eclipse.xtext.util.LineAndColumn;
import org.eclipse.xtext.validation.CheckMode;
import org.eclipse.xtext.validation.CheckType;
import org.eclipse.xtext.validation.IResourceValidator;
import org.eclipse.xtext.validation.Issue;
import org.girandole.lang.LanguageRules;
import org.girandole.lang.LoadedShow;
import org.girandole.lang.compile.ShowCompiler;
import org.girandole.plan.Finding;

/** Shows in an editor what the command line would print: the findings of the same compiler and the same rules, for one file. */
public class ShowResourceValidator implements IResourceValidator {
    private final ShowCompiler compiler;
    private final ShowChecks checks;

    @Inject
    public ShowResourceValidator(ShowCompiler compiler, ShowChecks checks) {
        this.compiler = compiler;
        this.checks = checks;
    }

    @Override
    public List<Issue> validate(Resource resource, CheckMode mode, CancelIndicator cancel) {
        if (!(resource instanceof XtextResource script) || script.getParseResult() == null) {
            return List.of();
        }
        LoadedShow show = compiler.compile(script);
        List<Finding> findings = new ArrayList<>(show.problems());
        if (!cancel.isCanceled() && mode.shouldCheck(CheckType.NORMAL)) {
            show.script().map(checks::check).ifPresent(findings::addAll);
        }
        List<Issue> issues = new ArrayList<>();
        for (Finding finding : findings) {
            if (finding.source().file().equals(show.file())) {
                issues.add(issue(finding, script));
            }
        }
        return issues;
    }

    private static Issue issue(Finding finding, XtextResource script) {
        ICompositeNode root = script.getParseResult().getRootNode();
        int offset = Math.min(offset(root.getText(), finding.source().line(), finding.source().column()), root.getTotalLength());
        int end = Math.min(offset + finding.source().length(), root.getTotalLength());
        LineAndColumn start = NodeModelUtils.getLineAndColumn(root, offset);
        LineAndColumn stop = NodeModelUtils.getLineAndColumn(root, end);
        Issue.IssueImpl issue = new Issue.IssueImpl();
        issue.setCode(finding.rule());
        issue.setSyntaxError(finding.rule().equals(LanguageRules.SYNTAX.id()));
        issue.setSeverity(severity(finding));
        issue.setMessage(finding.remedy().isEmpty() ? finding.message() : finding.message() + "\n" + finding.remedy());
        issue.setType(CheckType.FAST);
        issue.setUriToProblem(script.getURI());
        issue.setOffset(offset);
        issue.setLength(end - offset);
        issue.setLineNumber(start.getLine());
        issue.setColumn(start.getColumn());
        issue.setLineNumberEnd(stop.getLine());
        issue.setColumnEnd(stop.getColumn());
        issue.setData(finding.data().entrySet().stream().map(entry -> entry.getKey() + "=" + entry.getValue()).toArray(String[]::new));
        return issue;
    }

    private static int offset(String text, int line, int column) {
        int start = 0;
        for (int i = 1; i < line; i++) {
            int end = text.indexOf('\n', start);
            if (end < 0) {
                return text.length();
            }
            start = end + 1;
        }
        return start + column - 1;
    }

    /** A waived finding stays visible, as a piece of information. */
    private static Severity severity(Finding finding) {
        if (finding.waived()) {
            return Severity.INFO;
        }
        return switch (finding.severity()) {
            case ERROR -> Severity.ERROR;
            case WARNING -> Severity.WARNING;
            case INFO -> Severity.INFO;
        };
    }
}
