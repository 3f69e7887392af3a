package org.girandole.plan.rehearse;

import java.util.List;
import java.util.OptionalLong;

/**
 * One night, for one loaded slot. All times are night time: microseconds of true time, nought at the first note as the code has it.
 *
 * @param cues what the slot holds
 * @param takeoverUs when the backup controller takes over
 * @param musicLateUs how much later than its timecode the music runs
 * @param endUs when the night is over; what has not come due by then never will
 */
public record Night(List<Due> cues, Signal signal, HoldToFire hold, OptionalLong takeoverUs, long musicLateUs, long endUs) {
    public Night {
        cues = List.copyOf(cues);
    }

    /** A cue and the reading of the code at which it is to be fired, as show time in microseconds. */
    public record Due(String key, long dueUs) {
    }
}
