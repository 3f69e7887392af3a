package org.girandole.plan.schedule;

import org.girandole.plan.rules.RuleInfo;
import org.girandole.plan.script.SourceRef;

/** A moment or a name that could not be resolved, on its way to the list of troubles. */
final class Unresolved extends Exception {
    private static final long serialVersionUID = 1L;

    private final transient RuleInfo rule;
    private final String found;
    private final String allowed;
    private final String remedy;
    private final transient SourceRef source;

    Unresolved(RuleInfo rule, String message, String found, String allowed, String remedy, SourceRef source) {
        super(message, null, false, false);
        this.rule = rule;
        this.found = found;
        this.allowed = allowed;
        this.remedy = remedy;
        this.source = source;
    }

    RuleInfo rule() {
        return rule;
    }

    String found() {
        return found;
    }

    String allowed() {
        return allowed;
    }

    String remedy() {
        return remedy;
    }

    SourceRef source() {
        return source;
    }
}
