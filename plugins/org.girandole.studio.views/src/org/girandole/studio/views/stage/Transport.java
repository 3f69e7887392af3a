package org.girandole.studio.views.stage;

/** Plays and stops. Used on the thread of the display. */
public interface Transport {
    /** Plays from the playhead, or stops. */
    void toggle();

    /** Puts the playhead; goes on playing from there if it plays. */
    void seek(long us);
}
