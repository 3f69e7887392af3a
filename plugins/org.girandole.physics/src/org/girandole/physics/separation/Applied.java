package org.girandole.physics.separation;

/**
 * A rule or a modifier of a table that took part in an answer, with its own source: the base rule may have been read in its document while
 * what was added to it was not.
 *
 * @param words the rule in words
 * @param citation where it is from
 * @param changesNumber whether the number rests on it; a reduction that is allowed and not made changes nothing
 */
public record Applied(String words, Citation citation, boolean changesNumber) {
    /** Words, document, section and mark in one line. */
    public String text() {
        return words + ": " + citation.text();
    }
}
