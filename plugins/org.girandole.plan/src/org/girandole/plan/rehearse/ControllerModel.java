package org.girandole.plan.rehearse;

/**
 * How a controller behaves.
 *
 * @param stepUs cues are fired at multiples of this, microseconds
 * @param lockFrames consistent frames in a row until it locks
 * @param lossFrames frames without any until it says that it has lost the code
 * @param clock its own clock
 * @param jitterUs a command comes up to this much before or after its moment, microseconds
 * @param slewPpm how fast it makes good the difference when code is back, parts per million; 0 jumps at once
 * @param lateToleranceUs a cue that a jump has passed over is still fired if it is late by no more than this, microseconds
 * @param linkUs command to module, microseconds, on top of the system's latency
 * @param seed of the jitter
 */
public record ControllerModel(long stepUs, int lockFrames, int lossFrames, OwnClock clock, long jitterUs, double slewPpm,
        long lateToleranceUs, long linkUs, long seed) {
    /** Beyond this a difference is no clock error; the controller then jumps even if it would smooth. Common practice, no source. */
    public static final long SMOOTHED_UP_TO_US = 1_000_000;

    private static final double MOST_SLEW_PPM = 500_000;

    public ControllerModel {
        if (stepUs < 1 || lockFrames < 1 || lossFrames < 1 || jitterUs < 0 || lateToleranceUs < 0 || linkUs < 0) {
            throw new RehearsalException("A controller with step " + stepUs + " us, lock after " + lockFrames + " and loss after " + lossFrames
                    + " frames, jitter " + jitterUs + " us, late tolerance " + lateToleranceUs + " us, link " + linkUs
                    + " us; expected at least one of step and frames, and nothing negative");
        }
        if (!(slewPpm >= 0 && slewPpm <= MOST_SLEW_PPM)) {
            throw new RehearsalException("Smoothing at " + slewPpm + " ppm; expected 0 to " + (long) MOST_SLEW_PPM + " ppm");
        }
    }

    /** The same controller with another clock. */
    public ControllerModel withClock(OwnClock other) {
        return new ControllerModel(stepUs, lockFrames, lossFrames, other, jitterUs, slewPpm, lateToleranceUs, linkUs, seed);
    }
}
