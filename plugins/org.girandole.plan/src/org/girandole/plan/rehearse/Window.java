package org.girandole.plan.rehearse;

/** A stretch of the night, microseconds, the end not included. */
public record Window(long fromUs, long toUs) {
    public Window {
        if (toUs <= fromUs) {
            throw new RehearsalException("A stretch of time from " + fromUs + " us to " + toUs + " us; expected its end after its beginning");
        }
    }

    public boolean holds(long us) {
        return us >= fromUs && us < toUs;
    }
}
