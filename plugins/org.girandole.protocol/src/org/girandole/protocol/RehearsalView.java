package org.girandole.protocol;

import java.util.List;

/**
 * How a night goes that a script rehearses, with the clock with which cues are farthest from their moments. All times are of the
 * soundtrack that is played.
 *
 * @param nothing why there is no night to draw, in a sentence; null when there is one
 * @param choices every rehearsal of the script, in its order
 * @param name of the rehearsal
 * @param track name of the soundtrack
 * @param clock in words: {@code slow by 30 ppm}
 * @param lost when no timecode arrives
 * @param released when the hold-to-fire control is let go
 * @param states what the controller says, one after the other
 * @param cues what becomes of each cue of the soundtrack, by their numbers
 */
public record RehearsalView(String nothing, List<Choice> choices, String name, String track, String clock, List<Stretch> lost,
        List<Stretch> released, List<Said> states, List<Ending> cues) {
    /** An answer that says why there is none. */
    public static RehearsalView nothing(List<Choice> choices, String why) {
        return new RehearsalView(why, choices, "", "", "", List.of(), List.of(), List.of(), List.of());
    }

    /** A rehearsal that can be asked for. */
    public record Choice(String name, String track) {
    }

    /** The end is not part of it. */
    public record Stretch(long fromUs, long toUs) {
    }

    /** @param state no signal, acquiring, locked or holdover */
    public record Said(long fromUs, long toUs, String state) {
    }

    /**
     * What becomes of a cue.
     *
     * @param end fired, suppressed, skipped, or not loaded
     * @param lateUs fired later than the music wanted it, negative when early; null unless fired
     */
    public record Ending(int number, String end, Long lateUs) {
    }
}
