package org.girandole.physics.separation;

import java.util.Objects;

/**
 * Where a rule is from.
 *
 * @param document the document with its edition
 * @param section the number or table in it, empty if unknown
 * @param verification how the number was verified
 */
public record Citation(String document, String section, Verification verification) {
    public Citation {
        Objects.requireNonNull(document, "document");
        Objects.requireNonNull(section, "section");
        Objects.requireNonNull(verification, "verification");
    }

    /** Document, section and mark in one line: {@code 1. SprengV Annex 6, no. 3.3.2 (text read)}. */
    public String text() {
        return document + (section.isEmpty() ? "" : ", " + section) + " (" + verification.words() + ")";
    }
}
