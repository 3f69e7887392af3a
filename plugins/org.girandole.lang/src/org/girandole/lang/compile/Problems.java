package org.girandole.lang.compile;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.girandole.lang.LanguageRules;
import org.girandole.lang.parsing.SyntaxMessages;
import org.girandole.plan.Finding;
import org.girandole.plan.rules.Findings;
import org.girandole.plan.rules.RuleInfo;

/** Everything found wrong so far. */
public final class Problems {
    private static final String SYNTAX = LanguageRules.SYNTAX.id();
    private static final Comparator<Finding> BY_PLACE = Comparator.comparing(Finding::source)
            .thenComparing(finding -> finding.rule().equals(SYNTAX)).thenComparing(finding -> !SyntaxMessages.isExact(finding))
            .thenComparing(Finding::rule).thenComparing(Finding::message);

    private final Map<String, Findings> byRule = new LinkedHashMap<>();
    private int reported;

    /** Starts a problem; it counts once the draft is given its place. */
    public Findings.Draft report(RuleInfo rule, String message) {
        reported++;
        return byRule.computeIfAbsent(rule.id(), id -> new Findings(rule, rule.severity())).report(message);
    }

    /** How many there were so far, the same problem at the same place counted each time. */
    int reported() {
        return reported;
    }

    /**
     * In order of file, line and column; the same problem at the same place counts once. Of a line that cannot be read only the first
     * problem is told: the others follow from it more often than not, and come back when they do not.
     */
    public List<Finding> sorted() {
        List<Finding> all = new ArrayList<>();
        byRule.values().forEach(findings -> all.addAll(findings.all()));
        Set<String> unreadable = new HashSet<>();
        all.stream().filter(finding -> finding.rule().equals(SYNTAX)).forEach(finding -> unreadable.add(line(finding)));
        Set<String> told = new HashSet<>();
        return all.stream().distinct().sorted(BY_PLACE).filter(finding -> !unreadable.contains(line(finding)) || told.add(line(finding)))
                .toList();
    }

    private static String line(Finding finding) {
        return finding.source().file() + ":" + finding.source().line();
    }
}
