package org.girandole.plan.schedule;

import java.util.Optional;
import org.girandole.music.BarBeat;
import org.girandole.music.MusicPosition;
import org.girandole.music.Rational;

/**
 * A moment of a soundtrack that steps are added to without rounding in between. With a tempo it is a place in the music, without one
 * a time alone. Its value never changes.
 */
final class Moment {
    private final MusicPosition inMusic;
    private final Rational us;
    /** Asked for more than once, and costly for a place in the music. */
    private Rational exactUs;

    private Moment(MusicPosition inMusic, Rational us) {
        this.inMusic = inMusic;
        this.us = us;
    }

    static Moment inMusic(MusicPosition position) {
        return new Moment(position, null);
    }

    static Moment onClock(Rational us) {
        return new Moment(null, us);
    }

    /** Whether bars and beats can be counted from here. */
    boolean hasTempo() {
        return inMusic != null;
    }

    Moment plusBeats(Rational count) {
        return inMusic(inMusic.plusBeats(count));
    }

    Moment plusBars(Rational count) {
        return inMusic(inMusic.plusBars(count));
    }

    Moment plusUs(Rational count) {
        return inMusic != null ? inMusic(inMusic.plusUs(count)) : onClock(us.plus(count));
    }

    /** Microseconds before rounding. */
    Rational exactUs() {
        if (exactUs == null) {
            exactUs = inMusic != null ? inMusic.exactUs() : us;
        }
        return exactUs;
    }

    /** Show time in microseconds, rounded half up. */
    long timeUs() {
        return exactUs().roundHalfUp();
    }

    /** Bar and beat, where there is a tempo. */
    Optional<BarBeat> barBeat() {
        return Optional.ofNullable(inMusic).map(MusicPosition::barBeat);
    }
}
