package org.girandole.plan.rehearse;

import org.girandole.plan.script.SourceRef;

/** A rehearsal that contradicts itself, or for which the show lacks something. */
public final class ImpossibleNight extends Exception {
    private static final long serialVersionUID = 1L;

    private final String found;
    private final String allowed;
    private final String remedy;
    private final transient SourceRef source;

    ImpossibleNight(String message, String found, String allowed, String remedy, SourceRef source) {
        super(message, null, false, false);
        this.found = found;
        this.allowed = allowed;
        this.remedy = remedy;
        this.source = source;
    }

    /** What was found, with its unit. */
    public String found() {
        return found;
    }

    /** What would do, with its unit. */
    public String allowed() {
        return allowed;
    }

    /** How to mend it. */
    public String remedy() {
        return remedy;
    }

    /** Where it is written. */
    public SourceRef source() {
        return source;
    }
}
