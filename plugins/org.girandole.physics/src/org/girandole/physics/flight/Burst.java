package org.girandole.physics.flight;

import org.girandole.physics.Require;

/** When a shell bursts. */
public sealed interface Burst {

    /** At the highest point of its flight. */
    record AtApex() implements Burst {
    }

    /**
     * A time after firing, whether or not the highest point is reached.
     *
     * @param riseUs microseconds from firing to burst
     */
    record After(long riseUs) implements Burst {
        public After {
            Require.positive(riseUs, "rise", "us");
        }
    }
}
