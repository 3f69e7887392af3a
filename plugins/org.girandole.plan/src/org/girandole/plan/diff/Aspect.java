package org.girandole.plan.diff;

import java.util.function.Function;
import org.girandole.plan.PlannedCue;

/** A side of a cue that can change by itself. Together they are the whole cue. */
public enum Aspect {
    KEY("key", Audience.NOBODY, PlannedCue::key),
    NUMBER("number", Audience.CREW, PlannedCue::number),
    SOUNDTRACK("soundtrack", Audience.AUDIENCE, PlannedCue::soundtrack),
    SLOT("slot", Audience.CREW, PlannedCue::slot),
    SECTION("section", Audience.NOBODY, PlannedCue::section),
    NAME("name", Audience.NOBODY, PlannedCue::cueName),
    SHOT("shot", Audience.NOBODY, PlannedCue::shot),
    EFFECT("effect", Audience.AUDIENCE, PlannedCue::effect),
    CHAIN("chain", Audience.AUDIENCE, PlannedCue::chain),
    LOT("lot", Audience.CREW, PlannedCue::lot),
    POSITION("position", Audience.AUDIENCE, PlannedCue::position),
    TIMING("timing", Audience.AUDIENCE, PlannedCue::timing),
    TIMECODE("timecode", Audience.CREW, PlannedCue::timecode),
    AIM("aim", Audience.AUDIENCE, PlannedCue::aim),
    PIN("pin", Audience.CREW, PlannedCue::pin),
    TUBE("tube", Audience.CREW, PlannedCue::tube),
    CIRCUIT("loop", Audience.CREW, PlannedCue::circuit),
    BURST("burst", Audience.AUDIENCE, PlannedCue::burst),
    ITEMS("chain items", Audience.NOBODY, PlannedCue::items),
    SCRIPT("script line", Audience.NOBODY, PlannedCue::script),
    SOURCE("place in the script", Audience.NOBODY, PlannedCue::source);

    private final String word;
    private final Audience audience;
    private final Function<PlannedCue, Object> get;

    Aspect(String word, Audience audience, Function<PlannedCue, Object> get) {
        this.word = word;
        this.audience = audience;
        this.get = get;
    }

    /** The word for it in a report. */
    public String word() {
        return word;
    }

    /** Who notices when it changes. */
    public Audience noticedBy() {
        return audience;
    }

    /** Its value in a cue. */
    public Object of(PlannedCue cue) {
        return get.apply(cue);
    }

    /** Who notices a change. */
    public enum Audience {
        AUDIENCE, CREW, NOBODY
    }
}
