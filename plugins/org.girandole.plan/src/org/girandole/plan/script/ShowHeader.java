package org.girandole.plan.script;

import java.time.LocalDate;
import java.time.LocalTime;
import java.time.ZoneId;
import java.util.Optional;

/**
 * The {@code show} block.
 *
 * @param syncWithinUs how far from its moment a burst may be, in microseconds
 * @param separation name of the distance table that applies
 */
public record ShowHeader(String name, String label, Optional<LocalDate> date, Optional<LocalTime> time, Optional<ZoneId> zone,
        Optional<String> site, Optional<String> firingSystem, Optional<Long> syncWithinUs, Optional<String> separation,
        SourceRef source) {
}
