package org.girandole.plan.diff;

import org.girandole.plan.script.Waiver;

/** What happened to a waiver. */
public sealed interface WaiverChange {

    /** The waiver as it is afterwards, or was before if it is gone. */
    Waiver waiver();

    /** Somebody agreed to a risk. */
    record Added(Waiver waiver) implements WaiverChange {
    }

    /** An agreement was taken out. */
    record Removed(Waiver waiver) implements WaiverChange {
    }

    /** The same rule and subject, other words, person or date. */
    record Changed(Waiver before, Waiver waiver) implements WaiverChange {
    }
}
