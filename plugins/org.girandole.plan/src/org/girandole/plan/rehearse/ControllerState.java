package org.girandole.plan.rehearse;

/** What a controller says of its timecode. */
public enum ControllerState {
    /** No timecode, and none yet seen: it knows no time and fires nothing. */
    NO_SIGNAL("no signal"),
    /** Timecode is there, but not yet believed. A controller that had lock before goes on by its own clock. */
    ACQUIRING("acquiring"),
    /** It goes by timecode. */
    LOCKED("locked"),
    /** Timecode is gone; it goes on by its own clock. */
    HOLDOVER("holdover");

    private final String words;

    ControllerState(String words) {
        this.words = words;
    }

    public String words() {
        return words;
    }
}
