package org.girandole.plan.rules;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Supplier;
import org.girandole.plan.Finding;
import org.girandole.plan.Severity;
import org.girandole.plan.Subject;
import org.girandole.plan.script.SourceRef;

/** Collects what one rule reports. */
public final class Findings {
    private final RuleInfo rule;
    private final Severity severity;
    private final boolean cures;
    private final List<Finding> findings = new ArrayList<>();

    /** For a rule at the severity the script wants. */
    public Findings(RuleInfo rule, Severity severity) {
        this(rule, severity, true);
    }

    private Findings(RuleInfo rule, Severity severity, boolean cures) {
        this.rule = rule;
        this.severity = severity;
        this.cures = cures;
    }

    /** For what nobody reads further than that something was found: a remedy that must be looked for is left out. */
    static Findings withoutCures(RuleInfo rule, Severity severity) {
        return new Findings(rule, severity, false);
    }

    /** Starts a finding; it counts once {@link Draft#at} is called. */
    public Draft report(String message) {
        return new Draft(message);
    }

    public List<Finding> all() {
        return List.copyOf(findings);
    }

    /** A finding being written. */
    public final class Draft {
        private final String message;
        private String found = "";
        private String allowed = "";
        private String basis = rule.basis();
        private String remedy = "";
        private Subject subject = Subject.SHOW;
        private Map<String, String> data = Map.of();

        private Draft(String message) {
            this.message = message;
        }

        /** The value found and the value allowed, both with units. */
        public Draft found(String value, String limit) {
            found = value;
            allowed = limit;
            return this;
        }

        /** Where this limit comes from, when it is not the rule's usual basis. */
        public Draft basis(String text) {
            basis = text;
            return this;
        }

        public Draft remedy(String text) {
            remedy = text;
            return this;
        }

        /** A remedy that takes its time to find. */
        public Draft remedy(Supplier<String> text) {
            remedy = cures ? text.get() : "";
            return this;
        }

        public Draft about(Subject about) {
            subject = about;
            return this;
        }

        /** Values that a quick fix inserts. */
        public Draft data(Map<String, String> values) {
            data = values;
            return this;
        }

        /** Files the finding at its place. */
        public void at(SourceRef source) {
            findings.add(new Finding(rule.id(), severity, message, found, allowed, basis, remedy, source, subject, data,
                    Optional.empty()));
        }
    }
}
