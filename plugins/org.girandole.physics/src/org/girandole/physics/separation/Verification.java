package org.girandole.physics.separation;

/** How a number in a table was verified, from the best to the worst. */
public enum Verification {
    /** The text of the document was read and shows the number. */
    TEXT_READ("text read"),
    /** A page that quotes the document was read. */
    QUOTED("quoted by a second source"),
    /** Written by the user, who answers for it. */
    OWN("your own table"),
    /** Usual in the trade; no published source. */
    COMMON_PRACTICE("common practice, no source"),
    /** Believed right but not checked against the document. */
    FROM_MEMORY("from memory, not checked");

    private final String words;

    Verification(String words) {
        this.words = words;
    }

    /** The words for it on sheets and in findings. */
    public String words() {
        return words;
    }

    /** The worse of the two. */
    public Verification worse(Verification other) {
        return compareTo(other) >= 0 ? this : other;
    }
}
