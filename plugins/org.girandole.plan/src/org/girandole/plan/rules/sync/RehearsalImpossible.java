package org.girandole.plan.rules.sync;

import org.girandole.plan.Severity;
import org.girandole.plan.Subject;
import org.girandole.plan.rehearse.GoneThrough;
import org.girandole.plan.rules.Findings;
import org.girandole.plan.rules.RuleInfo;
import org.girandole.plan.rules.SharingRule;
import org.girandole.plan.rules.Workings;

/** A rehearsal that contradicts itself, speaks of moments outside of the music, or of a show that lacks what it needs. */
public final class RehearsalImpossible implements SharingRule {
    private static final RuleInfo INFO = new RuleInfo("rehearsal-impossible", RuleInfo.Family.SYNC, Severity.ERROR,
            "A rehearsal that cannot be gone through.",
            "Nothing is assumed in its place: the night it describes has not been rehearsed.", "the script's own rehearsal");

    @Override
    public RuleInfo info() {
        return INFO;
    }

    @Override
    public void check(Workings workings, Findings out) {
        for (GoneThrough night : workings.nights()) {
            night.impossible().ifPresent(why -> out.report(why.getMessage()).found(why.found(), why.allowed()).remedy(why.remedy())
                    .about(Subject.of(night.rehearsal().soundtrack())).at(why.source()));
        }
    }
}
