package org.girandole.plan.schedule;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.girandole.plan.Finding;
import org.girandole.plan.rules.Findings;
import org.girandole.plan.rules.RuleInfo;

/** Collects troubles. The same words about the same place are kept once, however many cues came from it. */
public final class TroubleLog {
    private final Map<RuleInfo, Findings> byRule = new LinkedHashMap<>();

    /** Starts a finding of this rule at its usual severity. */
    public Findings.Draft report(RuleInfo rule, String message) {
        return byRule.computeIfAbsent(rule, r -> new Findings(r, r.severity())).report(message);
    }

    void report(Unresolved trouble) {
        report(trouble.rule(), trouble.getMessage()).found(trouble.found(), trouble.allowed()).remedy(trouble.remedy())
                .at(trouble.source());
    }

    /** Everything reported, in the order of the script. */
    public List<Finding> all() {
        Set<Finding> once = new LinkedHashSet<>();
        byRule.values().forEach(findings -> once.addAll(findings.all()));
        List<Finding> sorted = new ArrayList<>(once);
        sorted.sort(Comparator.comparing(Finding::source).thenComparing(Finding::rule).thenComparing(Finding::message));
        return List.copyOf(sorted);
    }
}
