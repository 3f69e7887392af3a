package org.girandole.plan.script;

/**
 * How a controller follows timecode, and how it does without.
 *
 * @param lockFrames consistent frames in a row until it locks
 * @param lossFrames frames without any until it says that it has lost the code
 * @param ageingPpmPerDay change of its clock's deviation, parts per million a day
 * @param jitterUs a command comes up to this much before or after its moment, microseconds
 * @param smoothPpm how fast it makes good the difference when code is back, parts per million; 0 jumps at once
 * @param lateToleranceUs a cue that it finds overdue is fired if it is late by no more than this, microseconds
 * @param linkUs command to module, on top of the latency, microseconds
 */
public record Control(int lockFrames, int lossFrames, double ageingPpmPerDay, long jitterUs, double smoothPpm, long lateToleranceUs,
        long linkUs) {
    /**
     * Where the script says nothing: two seconds of frames to lock, half a second to notice a loss, a jump when code is back, 100 ms of
     * lateness. Common practice, no source. No ageing, jitter or link: they are part of "clock within", half a step and "latency".
     */
    public static final Control DEFAULT = new Control(50, 12, 0, 0, 0, 100_000, 0);
}
