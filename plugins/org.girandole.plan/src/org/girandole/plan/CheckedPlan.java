package org.girandole.plan;

import java.util.List;

/**
 * A plan with everything found about it.
 *
 * @param findings waived ones included, by severity, then place
 */
public record CheckedPlan(Plan plan, List<Finding> findings) {
    public CheckedPlan {
        findings = List.copyOf(findings);
    }

    /** Whether nothing grave is left that nobody agreed to. */
    public boolean clean() {
        return findings.stream().noneMatch(f -> f.severity() == Severity.ERROR && !f.waived());
    }
}
