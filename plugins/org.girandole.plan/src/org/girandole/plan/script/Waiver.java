package org.girandole.plan.script;

import java.time.LocalDate;
import java.util.Optional;

/**
 * A risk that someone lives with in writing.
 *
 * @param rule id of the rule
 * @param subject effect, chain, cue name, module, rack, soundtrack, audience or protected place it is limited to; empty for any
 * @param position position it is limited to; empty for any
 */
public record Waiver(String rule, Optional<String> subject, Optional<String> position, String because, String by,
        Optional<LocalDate> until, SourceRef source) {
}
