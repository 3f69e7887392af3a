package org.girandole.plan.schedule;

import org.girandole.plan.script.Soundtrack;
import org.girandole.plan.script.TimeExpr;

/** Moments of one soundtrack that stand outside of its score. */
public final class WrittenTimes {
    private final Ruler ruler;

    private WrittenTimes(Ruler ruler) {
        this.ruler = ruler;
    }

    /** What is wrong with the soundtrack itself is among the plan's troubles already and is not told again. */
    public static WrittenTimes of(Soundtrack soundtrack) {
        return new WrittenTimes(new Ruler(soundtrack, new TroubleLog()));
    }

    /**
     * The moment in microseconds from the first note.
     *
     * @throws MomentException if the soundtrack has no such moment
     */
    public long us(TimeExpr written) throws MomentException {
        try {
            return ruler.resolve(written, ruler.firstNote()).timeUs();
        } catch (Unresolved e) {
            throw new MomentException(e);
        }
    }

    /** A moment that the soundtrack does not have. */
    public static final class MomentException extends Exception {
        private static final long serialVersionUID = 1L;

        private final String found;
        private final String allowed;
        private final String remedy;

        private MomentException(Unresolved why) {
            super(why.getMessage(), null, false, false);
            this.found = why.found();
            this.allowed = why.allowed();
            this.remedy = why.remedy();
        }

        public String found() {
            return found;
        }

        public String allowed() {
            return allowed;
        }

        public String remedy() {
            return remedy;
        }
    }
}
