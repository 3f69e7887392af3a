package org.girandole.plan.rules.sync;

import org.girandole.plan.Plan;
import org.girandole.plan.Severity;
import org.girandole.plan.Subject;
import org.girandole.plan.rehearse.ImpossibleNight;
import org.girandole.plan.rehearse.Rehearsals;
import org.girandole.plan.rules.Findings;
import org.girandole.plan.rules.Rule;
import org.girandole.plan.rules.RuleInfo;
import org.girandole.plan.script.Rehearsal;

/** A rehearsal that contradicts itself, speaks of moments outside of the music, or of a show that lacks what it needs. */
public final class RehearsalImpossible implements Rule {
    private static final RuleInfo INFO = new RuleInfo("rehearsal-impossible", RuleInfo.Family.SYNC, Severity.ERROR,
            "A rehearsal that cannot be gone through.",
            "Nothing is assumed in its place: the night it describes has not been rehearsed.", "the script's own rehearsal");

    @Override
    public RuleInfo info() {
        return INFO;
    }

    @Override
    public void check(Plan plan, Findings out) {
        for (Rehearsal rehearsal : plan.script().rehearsals()) {
            try {
                Rehearsals.of(plan, rehearsal);
            } catch (ImpossibleNight e) {
                out.report(e.getMessage()).found(e.found(), e.allowed()).remedy(e.remedy()).about(Subject.of(rehearsal.soundtrack()))
                        .at(e.source());
            }
        }
    }
}
