package org.girandole.plan.schedule;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * What the times inside a repetition or a figure count from.
 *
 * @param what in words: {@code round 3 of 4}, {@code figure Crossing}; empty for the score itself
 * @param rounds how often each enclosing repetition has come round, from 0, outermost first
 * @param around the origin that this one was counted from
 */
public record Origin(Moment at, String what, List<Integer> rounds, Optional<Origin> around) {
    public Origin {
        rounds = List.copyOf(rounds);
    }

    static Origin ofScore(Moment firstNote) {
        return new Origin(firstNote, "", List.of(), Optional.empty());
    }

    Origin round(Moment start, int round, int of) {
        List<Integer> inner = new ArrayList<>(rounds);
        inner.add(round);
        return new Origin(start, "round " + (round + 1) + " of " + of, inner, Optional.of(this));
    }

    Origin figure(Moment start, String name) {
        return new Origin(start, "figure " + name, rounds, Optional.of(this));
    }
}
