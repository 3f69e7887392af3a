package org.girandole.plan.rules;

import org.girandole.plan.script.SourceRef;

/** Where limits come from, in words. */
public final class Basis {
    /** For facts of the trade that no document was found for. */
    public static final String COMMON_PRACTICE = "common practice, no source";

    private Basis() {
    }

    /** The script's own words, and where they stand. */
    public static String script(String words, SourceRef source) {
        return "script: " + words + " (" + source.file() + ":" + source.line() + ")";
    }
}
