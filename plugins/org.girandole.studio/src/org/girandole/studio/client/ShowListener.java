package org.girandole.studio.client;

import java.util.Optional;

/** Hears of what the user looks at, and of new findings. */
public interface ShowListener {
    /** Another script is being looked at, or none. On the display's thread. */
    default void editorChanged(Optional<String> uri) {
    }

    /** The caret went to another line, counted from 1. On the display's thread. */
    default void caretMoved(String uri, int line) {
    }

    /** A check has ended and told what it found in this file. On any thread. */
    default void checked(String uri) {
    }
}
