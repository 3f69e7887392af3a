package org.girandole.studio.views.timeline;

import java.util.List;
import org.girandole.protocol.TrackView;
import org.girandole.studio.views.stage.Words;

/** How far apart the lines of a ruler are. */
final class Steps {
    private static final long US_PER_S = 1_000_000;
    private static final long[] STEPS_US = {10_000, 50_000, 100_000, 200_000, 500_000, US_PER_S, 2 * US_PER_S, 5 * US_PER_S, 10 * US_PER_S, 15 * US_PER_S,
        30 * US_PER_S, 60 * US_PER_S, 120 * US_PER_S, 300 * US_PER_S, 600 * US_PER_S};

    private Steps() {
    }

    /** The smallest round step that is at least so long. */
    static long time(double leastUs) {
        for (long step : STEPS_US) {
            if (step >= leastUs) {
                return step;
            }
        }
        return STEPS_US[STEPS_US.length - 1] * (long) Math.ceil(leastUs / STEPS_US[STEPS_US.length - 1]);
    }

    /** A time with as many places as the step needs. */
    static String label(long us, long step) {
        return step >= US_PER_S ? Words.minutes(us) : Words.clock(us);
    }

    /** Every how many bars a line can be drawn: 1, 2, 4, 8 and so on. */
    static int bars(double barPx, double leastPx) {
        int every = 1;
        while (every * barPx < leastPx && every < 1 << 16) {
            every *= 2;
        }
        return every;
    }

    /** Index of the bar that a moment lies in, 0 before the first. */
    static int firstBar(List<TrackView.Bar> bars, long us) {
        int low = 0;
        int high = bars.size();
        while (low < high) {
            int middle = (low + high) >>> 1;
            if (bars.get(middle).atUs() <= us) {
                low = middle + 1;
            } else {
                high = middle;
            }
        }
        return Math.max(0, low - 1);
    }
}
