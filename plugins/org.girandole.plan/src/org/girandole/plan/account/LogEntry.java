package org.girandole.plan.account;

import java.time.LocalTime;
import java.util.Optional;

/**
 * A line of a log.
 *
 * @param line in the file, from 1
 * @param cue number or key of the cue
 * @param time by the clock, when it was written down
 */
public record LogEntry(long line, String cue, Outcome outcome, Optional<LocalTime> time, String note) {
}
