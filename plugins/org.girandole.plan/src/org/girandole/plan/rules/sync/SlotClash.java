package org.girandole.plan.rules.sync;

import java.util.HashMap;
import java.util.Map;
import org.girandole.plan.Plan;
import org.girandole.plan.Severity;
import org.girandole.plan.Subject;
import org.girandole.plan.rules.Basis;
import org.girandole.plan.rules.Findings;
import org.girandole.plan.rules.Rule;
import org.girandole.plan.rules.RuleInfo;
import org.girandole.plan.script.Score;

/** Two scores in one slot of the controller. */
public final class SlotClash implements Rule {
    private static final RuleInfo INFO = new RuleInfo("slot-clash", RuleInfo.Family.SYNC, Severity.ERROR,
            "Two soundtracks are loaded into the same slot.",
            "The later one overwrites the earlier one in the controller; on the night the wrong show is fired.",
            "a slot of the controller holds one show");

    @Override
    public RuleInfo info() {
        return INFO;
    }

    @Override
    public void check(Plan plan, Findings out) {
        Map<Integer, Score> owners = new HashMap<>();
        for (Score score : plan.script().scores()) {
            Score owner = owners.putIfAbsent(score.slot(), score);
            if (owner != null) {
                out.report("The score of " + score.soundtrack() + " goes into slot " + score.slot() + ", where " + owner.soundtrack()
                        + " is already")
                        .found("slot " + score.slot() + " twice", "a slot of its own for each score")
                        .basis(Basis.script("score " + owner.soundtrack() + " in slot " + owner.slot(), owner.source()))
                        .remedy("give one of them another slot")
                        .about(Subject.of(score.soundtrack(), owner.soundtrack()))
                        .data(Map.of("slot", Integer.toString(score.slot())))
                        .at(score.source());
            }
        }
    }
}
