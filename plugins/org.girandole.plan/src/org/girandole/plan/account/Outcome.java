package org.girandole.plan.account;

import java.util.Arrays;
import java.util.Locale;
import java.util.Optional;

/** What became of a cue. */
public enum Outcome {
    /** It fired and functioned. */
    FIRED("fired"),
    /** The current was sent and it did not fire: it is live where it stands. */
    MISFIRED("misfired"),
    /** No current was sent, because it was held or passed over: it is live where it stands. */
    NOT_FIRED("not-fired"),
    /** It left its tube and did not function: it lies somewhere, live. */
    DUD("dud"),
    /** It was taken out unfired, made safe, and is in stock again. */
    RETURNED("returned");

    private final String word;

    Outcome(String word) {
        this.word = word;
    }

    /** The word in a log. */
    public String word() {
        return word;
    }

    /** Whether pieces of it are live in the field until somebody has dealt with them. */
    public boolean live() {
        return this == MISFIRED || this == NOT_FIRED || this == DUD;
    }

    /** The outcome with that word, in whatever case; {@code not fired} counts as {@code not-fired}. */
    static Optional<Outcome> named(String written) {
        String plain = written.toLowerCase(Locale.ROOT).replace(' ', '-').replace('_', '-');
        return Arrays.stream(values()).filter(outcome -> outcome.word.equals(plain)).findFirst();
    }
}
