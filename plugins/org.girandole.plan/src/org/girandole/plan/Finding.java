package org.girandole.plan;

import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.Collections;
import org.girandole.plan.script.SourceRef;
import org.girandole.plan.script.Waiver;

/**
 * Something that is wrong or doubtful, in the user's words.
 *
 * @param rule id of the rule, kebab-case
 * @param message one sentence that stands alone
 * @param found the value found, with its unit
 * @param allowed the value allowed, with its unit
 * @param basis where the limit comes from: the script's own words, a document, or "common practice, no source"
 * @param remedy what would mend it
 * @param data machine-readable values for quick fixes; sorted
 * @param waiver the written agreement to live with it, if there is one
 */
public record Finding(String rule, Severity severity, String message, String found, String allowed, String basis, String remedy,
        SourceRef source, Subject subject, Map<String, String> data, Optional<Waiver> waiver) {
    public Finding {
        data = Collections.unmodifiableMap(new TreeMap<>(data));
    }

    /** Whether somebody agreed to it in writing. */
    public boolean waived() {
        return waiver.isPresent();
    }
}
