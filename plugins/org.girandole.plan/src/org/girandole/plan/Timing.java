package org.girandole.plan;

/**
 * The delay arithmetic of one firing, microseconds: {@code fire = seen - rise - latency - sound + rounding}.
 *
 * @param mode whether the moment is when it is seen or when it is heard at the listening point
 * @param seenUs the moment the script asks for
 * @param riseUs firing to first burst; for a chain its lead is part of it
 * @param riseSource where the rise comes from
 * @param leadUs the chain's lead inside {@code riseUs}, 0 otherwise
 * @param latencyUs the firing system's latency
 * @param soundUs travel of the sound, 0 unless heard
 * @param soundDistanceM burst to listening point, 0 unless heard
 * @param roundingUs what rounding to the system's step (half up) added
 * @param fireUs the moment to fire, a multiple of the step
 * @param riseToleranceUs scatter of the rise
 * @param stepToleranceUs half a step
 * @param chainToleranceUs worst case at the chain's last item, 0 for single effects
 * @param chainToleranceRssUs the same as root sum of squares
 */
public record Timing(SeenMode mode, long seenUs, long riseUs, RiseSource riseSource, long leadUs, long latencyUs, long soundUs,
        double soundDistanceM, long roundingUs, long fireUs, long riseToleranceUs, long stepToleranceUs, long chainToleranceUs,
        long chainToleranceRssUs) {
    /** Worst-case error budget. */
    public long toleranceUs() {
        return riseToleranceUs + stepToleranceUs + chainToleranceUs;
    }

    /** Which sense the moment is meant for. */
    public enum SeenMode {
        SEEN, HEARD
    }

    /** Where a rise comes from. */
    public enum RiseSource {
        /** Measured on the lot. */
        LOT,
        /** The catalogue's. */
        CATALOGUE,
        /** Estimated from the calibre: marked wherever it shows. */
        ESTIMATED,
        /** The effect is seen as it is fired. */
        NONE
    }
}
