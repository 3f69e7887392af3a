package org.girandole.plan.script;

import org.girandole.physics.separation.DistanceTable;

/**
 * A {@code distances} block: a distance table that the user wrote and answers for.
 *
 * @param table its rules, each marked as the user's own
 */
public record DistanceRules(DistanceTable table, SourceRef source) {
}
