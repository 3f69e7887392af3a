package org.girandole.plan.rehearse;

import java.util.OptionalLong;

/**
 * What became of a cue.
 *
 * @param dueUs code at which it was to be fired, show time in microseconds
 * @param commandUs night time of the command that fired it, or that the released control held back
 * @param firedUs night time at which it was fired, a link delay after the command; empty unless fired
 * @param lateUs fired later than the music wanted it, microseconds; negative when early; empty unless fired
 * @param clockErrorUs how far the controller's reckoning was ahead of the code, microseconds; 0 when nothing was commanded
 * @param boundUs how far it may have been ahead or behind by what is known of clock and jitter, microseconds
 */
public record CueOutcome(String key, long dueUs, End end, OptionalLong commandUs, OptionalLong firedUs, OptionalLong lateUs,
        long clockErrorUs, long boundUs, ControllerState state) {
    /** How a cue ends; each ends once. */
    public enum End {
        FIRED("fired"),
        /** It came due while the hold-to-fire control was released. It is not fired later. */
        SUPPRESSED("suppressed"),
        /** It never came due: the code jumped over it, or the controller knew no time. */
        SKIPPED("skipped");

        private final String words;

        End(String words) {
            this.words = words;
        }

        public String words() {
            return words;
        }
    }
}
