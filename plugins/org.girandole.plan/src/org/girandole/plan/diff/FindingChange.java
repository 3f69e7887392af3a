package org.girandole.plan.diff;

import org.girandole.plan.Finding;

/** What happened to a finding. */
public sealed interface FindingChange {

    /** The finding as it is afterwards, or was before if it is gone. */
    Finding finding();

    /** A finding that was not there. */
    record New(Finding finding) implements FindingChange {
    }

    /** A finding that is no more. */
    record Gone(Finding finding) implements FindingChange {
    }

    /** The same rule about the same thing, with another value, severity or waiver. */
    record Changed(Finding before, Finding finding) implements FindingChange {
    }
}
