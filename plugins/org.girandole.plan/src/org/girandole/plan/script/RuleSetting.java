package org.girandole.plan.script;

/** A severity that the script raises for a rule. */
public record RuleSetting(String rule, String severity, SourceRef source) {
}
