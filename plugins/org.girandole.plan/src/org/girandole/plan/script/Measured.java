package org.girandole.plan.script;

/**
 * A duration with its scatter, as written {@code 2.4 s +- 0.15 s}.
 *
 * @param valueUs microseconds
 * @param plusMinusUs half-width of the tolerance band in microseconds, 0 when none was written
 */
public record Measured(long valueUs, long plusMinusUs) {
}
