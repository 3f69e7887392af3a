package org.girandole.sheets.findings;

import java.util.List;
import java.util.function.UnaryOperator;
import org.girandole.plan.Finding;
import org.girandole.plan.Severity;
import org.girandole.plan.rules.RuleInfo;

/**
 * Findings to be told.
 *
 * @param findings in the order in which they are told
 * @param scripts how many scripts were looked at
 * @param rules what is known about rules; findings of others are told all the same
 * @param toolVersion of the program
 * @param path turns a path of a finding, relative to the project, into one that the reader can open
 */
public record FindingReport(List<Finding> findings, int scripts, List<RuleInfo> rules, String toolVersion, UnaryOperator<String> path) {
    public FindingReport {
        findings = List.copyOf(findings);
        rules = List.copyOf(rules);
    }

    /** How many findings of this severity nobody has agreed to. */
    public long open(Severity severity) {
        return findings.stream().filter(f -> f.severity() == severity && !f.waived()).count();
    }

    /** How many findings somebody has agreed to. */
    public long waived() {
        return findings.stream().filter(Finding::waived).count();
    }
}
