package org.girandole.plan.rules;

import org.girandole.plan.Plan;
import org.girandole.plan.PlannedCue;
import org.girandole.plan.script.FiringSystem;

/**
 * How far a cue has to be moved in the script for its firing to move far enough. Firings lie on the steps of the firing system, so that a cue
 * moved by a part of a step may be fired where it was; people write whole milliseconds.
 */
public final class Shift {
    private static final long US_PER_MS = 1000;

    private Shift() {
    }

    /** The least whole number of milliseconds that surely moves a firing by {@code leastUs}, in microseconds. */
    public static long us(Plan plan, long leastUs) {
        long stepUs = plan.script().firingSystem().flatMap(FiringSystem::stepUs).filter(step -> step > 0).orElse(1L);
        return up(up(leastUs, stepUs), US_PER_MS);
    }

    /** The least whole number of milliseconds that moves what is judged as it is written, whatever the steps, by {@code leastUs}, in microseconds. */
    public static long writtenUs(long leastUs) {
        return up(leastUs, US_PER_MS);
    }

    /**
     * The least whole number of milliseconds that surely brings the last thing seen of a cue forward by {@code leastUs}, in microseconds. Of
     * a chain that may be a part of a step too much: its items follow its firing, and no advice hangs on which way that happens to be rounded.
     */
    public static long lastSeenUs(Plan plan, PlannedCue cue, long leastUs) {
        return cue.items().isEmpty() ? writtenUs(leastUs) : us(plan, leastUs);
    }

    private static long up(long us, long unitUs) {
        return Math.floorDiv(us + unitUs - 1, unitUs) * unitUs;
    }
}
