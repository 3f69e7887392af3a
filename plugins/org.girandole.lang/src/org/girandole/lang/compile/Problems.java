package org.girandole.lang.compile;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.girandole.plan.Finding;
import org.girandole.plan.rules.Findings;
import org.girandole.plan.rules.RuleInfo;

/** Everything found wrong so far. */
public final class Problems {
    private static final Comparator<Finding> BY_PLACE = Comparator.comparing(Finding::source).thenComparing(Finding::rule)
            .thenComparing(Finding::message);

    private final Map<String, Findings> byRule = new LinkedHashMap<>();

    /** Starts a problem; it counts once the draft is given its place. */
    public Findings.Draft report(RuleInfo rule, String message) {
        return byRule.computeIfAbsent(rule.id(), id -> new Findings(rule, rule.severity())).report(message);
    }

    /** In order of file, line and column; the same problem at the same place counts once. */
    public List<Finding> sorted() {
        List<Finding> all = new ArrayList<>();
        byRule.values().forEach(findings -> all.addAll(findings.all()));
        return all.stream().distinct().sorted(BY_PLACE).toList();
    }
}
