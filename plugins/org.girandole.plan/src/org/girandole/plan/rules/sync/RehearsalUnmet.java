package org.girandole.plan.rules.sync;

import org.girandole.plan.Severity;
import org.girandole.plan.Subject;
import org.girandole.plan.rehearse.Expectations;
import org.girandole.plan.rehearse.GoneThrough;
import org.girandole.plan.rehearse.Rehearsed;
import org.girandole.plan.rules.Basis;
import org.girandole.plan.rules.Cues;
import org.girandole.plan.rules.Findings;
import org.girandole.plan.rules.RuleInfo;
import org.girandole.plan.rules.SharingRule;
import org.girandole.plan.rules.Workings;
import org.girandole.plan.script.Rehearsal;

/** A rehearsal out of which comes something else than what it expects. */
public final class RehearsalUnmet implements SharingRule {
    private static final RuleInfo INFO = new RuleInfo("rehearsal-unmet", RuleInfo.Family.SYNC, Severity.ERROR,
            "A rehearsal does not come out as it is expected to.",
            "What was agreed to happen when timecode fails or the control is let go will not happen.", "the script's own expectation");

    @Override
    public RuleInfo info() {
        return INFO;
    }

    @Override
    public void check(Workings workings, Findings out) {
        // Those that cannot be gone through are reported by a rule of their own.
        workings.nights().forEach(gone -> gone.night().ifPresent(night -> check(gone.rehearsal(), night, out)));
    }

    private static void check(Rehearsal rehearsal, Rehearsed night, Findings out) {
        for (Expectations.Unmet unmet : Expectations.unmet(rehearsal, night)) {
            out.report(unmet.message()).found(unmet.found(), unmet.allowed())
                    .basis(Basis.script("rehearse \"" + rehearsal.name() + "\"", unmet.source()))
                    .remedy("rehearse it and see why; move the cues, change what the crew does, or expect what is true")
                    .about(unmet.cue().map(Cues::subject).orElse(Subject.of(rehearsal.soundtrack()))).at(unmet.source());
        }
    }
}
