package org.girandole.lang.compile;

import java.util.Optional;

/** Signs that people write from habit, or that a word processor puts there, and what the language has in their place. */
public final class Signs {
    private Signs() {
    }

    /** What would mend it when this stands where it has no meaning; empty for what is no such sign. */
    public static Optional<String> remedy(String found) {
        if (found.isEmpty()) {
            return Optional.empty();
        }
        return switch (found.charAt(0)) {
            case '\'', '`', '\u2018', '\u2019', '\u201A', '\u201C', '\u201D', '\u201E', '\u00AB', '\u00BB' ->
                    Optional.of("texts stand in double quotes: \"…\"");
            case '\u2010', '\u2011', '\u2012', '\u2013', '\u2014', '\u2212' -> Optional.of("write the minus of the keyboard: -");
            case '#' -> Optional.of("comments begin with //");
            case ':', '=' -> Optional.of("leave it out: a value follows its word after a space");
            case '&' -> Optional.of("several are separated by commas");
            default -> Optional.empty();
        };
    }
}
