package org.girandole.plan.table;

import java.util.Arrays;
import java.util.Optional;

/** How a value is written in a column, chosen with {@code as}. */
public enum TableFormat {
    TIMECODE("timecode", "label of the frame that contains the moment, hh:mm:ss:ff, or hh:mm:ss;ff when frames are dropped"),
    CLOCK("clock", "m:ss.mmm from the first note; more places only where the time needs them"),
    SECONDS("seconds", "seconds, with three places or as many more as the time needs"),
    MILLISECONDS("milliseconds", "milliseconds, with places only where the time needs them"),
    FRAMES("frames", "whole frames since the timecode line began, at the soundtrack's rate"),
    MILLIMETRES("millimetres", "millimetres"),
    INCHES("inches", "inches of 25.4 mm, to a hundredth"),
    GRAMS("grams", "grams"),
    KILOGRAMS("kilograms", "kilograms");

    private final String id;
    private final String meaning;

    TableFormat(String id, String meaning) {
        this.id = id;
        this.meaning = meaning;
    }

    /** The word of the language. */
    public String id() {
        return id;
    }

    /** For help and documentation. */
    public String meaning() {
        return meaning;
    }

    public static Optional<TableFormat> find(String id) {
        return Arrays.stream(values()).filter(format -> format.id.equals(id)).findFirst();
    }
}
