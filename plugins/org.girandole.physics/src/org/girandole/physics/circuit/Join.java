package org.girandole.physics.circuit;

/** How several igniters on one pin are joined. */
public enum Join {
    /** One after the other: the same current goes through all. */
    SERIES,
    /** Side by side: the current divides. */
    PARALLEL
}
