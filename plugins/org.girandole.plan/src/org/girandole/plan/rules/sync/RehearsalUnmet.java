package org.girandole.plan.rules.sync;

import org.girandole.plan.Plan;
import org.girandole.plan.Severity;
import org.girandole.plan.Subject;
import org.girandole.plan.rehearse.Expectations;
import org.girandole.plan.rehearse.ImpossibleNight;
import org.girandole.plan.rehearse.Rehearsals;
import org.girandole.plan.rules.Basis;
import org.girandole.plan.rules.Cues;
import org.girandole.plan.rules.Findings;
import org.girandole.plan.rules.Rule;
import org.girandole.plan.rules.RuleInfo;
import org.girandole.plan.script.Rehearsal;

/** A rehearsal out of which comes something else than what it expects. */
public final class RehearsalUnmet implements Rule {
    private static final RuleInfo INFO = new RuleInfo("rehearsal-unmet", RuleInfo.Family.SYNC, Severity.ERROR,
            "A rehearsal does not come out as it is expected to.",
            "What was agreed to happen when timecode fails or the control is let go will not happen.", "the script's own expectation");

    @Override
    public RuleInfo info() {
        return INFO;
    }

    @Override
    public void check(Plan plan, Findings out) {
        for (Rehearsal rehearsal : plan.script().rehearsals()) {
            try {
                for (Expectations.Unmet unmet : Expectations.unmet(rehearsal, Rehearsals.of(plan, rehearsal))) {
                    out.report(unmet.message()).found(unmet.found(), unmet.allowed())
                            .basis(Basis.script("rehearse \"" + rehearsal.name() + "\"", unmet.source()))
                            .remedy("rehearse it and see why; move the cues, change what the crew does, or expect what is true")
                            .about(unmet.cue().map(Cues::subject).orElse(Subject.of(rehearsal.soundtrack()))).at(unmet.source());
                }
            } catch (ImpossibleNight e) {
                // A rule of its own reports these.
                continue;
            }
        }
    }
}
