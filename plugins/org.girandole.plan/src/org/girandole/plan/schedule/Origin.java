package org.girandole.plan.schedule;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.girandole.plan.script.ScoreItem;

/**
 * What the times inside a repetition or a figure count from.
 *
 * @param item the repetition or figure; empty for the score itself
 * @param rounds how often each enclosing repetition has come round, from 0, outermost first
 * @param around the origin that this one was counted from
 */
record Origin(Moment at, Optional<ScoreItem> item, List<Integer> rounds, Optional<Origin> around) {
    Origin {
        rounds = List.copyOf(rounds);
    }

    static Origin ofScore(Moment firstNote) {
        return new Origin(firstNote, Optional.empty(), List.of(), Optional.empty());
    }

    Origin round(Moment start, ScoreItem.Repeat repeat, int round) {
        List<Integer> inner = new ArrayList<>(rounds);
        inner.add(round);
        return new Origin(start, Optional.of(repeat), inner, Optional.of(this));
    }

    Origin figure(Moment start, ScoreItem.Play play) {
        return new Origin(start, Optional.of(play), rounds, Optional.of(this));
    }
}
