package org.girandole.music;

import java.util.Objects;

/** One line of a tempo map. */
public sealed interface TempoEvent {

    /** The first line of every map: bar 1 beat 1 lies at this show time. Earlier music runs at the same tempo. */
    record Start(long timeUs, Rational bpm, Meter meter) implements TempoEvent {
        public Start {
            Objects.requireNonNull(bpm, "bpm");
            Objects.requireNonNull(meter, "meter");
        }
    }

    /** From this bar on another tempo, another meter, or both. {@code null} keeps what was there. */
    record Step(int bar, Rational bpm, Meter meter) implements TempoEvent {
    }

    /** The tempo moves from what it is at {@code fromBar} to {@code toBpm}, reached at the start of {@code toBar}. */
    record Ramp(int fromBar, Rational toBpm, int toBar, RampLaw law) implements TempoEvent {
        public Ramp {
            Objects.requireNonNull(toBpm, "toBpm");
            Objects.requireNonNull(law, "law");
        }
    }
}
