package org.girandole.plan.rules;

import org.girandole.plan.Severity;

/**
 * What a rule says about itself; its page in the docs carries the same id.
 *
 * @param id kebab-case, stable for ever
 * @param severity unless the script raises it
 * @param summary one line: what is wrong when it fires
 * @param reason why that matters in the field
 * @param basis where the limit comes from
 */
public record RuleInfo(String id, Family family, Severity severity, String summary, String reason, String basis) {
    /** What a rule is about. */
    public enum Family {
        LANGUAGE, TIMING, HARDWARE, LOADING, DISTANCE, STOCK, SYNC, HOUSEKEEPING
    }
}
