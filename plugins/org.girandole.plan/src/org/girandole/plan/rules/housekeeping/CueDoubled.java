package org.girandole.plan.rules.housekeeping;

import java.util.HashMap;
import java.util.Map;
import org.girandole.plan.PlannedCue;
import org.girandole.plan.Severity;
import org.girandole.plan.rules.Basis;
import org.girandole.plan.rules.Cues;
import org.girandole.plan.rules.Findings;
import org.girandole.plan.rules.RuleInfo;
import org.girandole.plan.rules.SharingRule;
import org.girandole.plan.rules.Workings;

/** The same effect at the same position at the same moment, written twice. */
public final class CueDoubled implements SharingRule {
    private static final RuleInfo INFO = new RuleInfo("cue-doubled", RuleInfo.Family.HOUSEKEEPING, Severity.WARNING,
            "Two lines fire the same effect at the same place and moment.",
            "Most often a line was copied and not changed. Two shells instead of one also count twice for distance and stock.",
            Basis.COMMON_PRACTICE);

    @Override
    public RuleInfo info() {
        return INFO;
    }

    @Override
    public void check(Workings workings, Findings out) {
        Map<Same, PlannedCue> firsts = new HashMap<>();
        for (PlannedCue cue : workings.oncePerPlace()) {
            Same same = new Same(cue.soundtrack(), cue.what(), cue.position(), cue.timing().seenUs(), cue.aim().tiltDeg());
            PlannedCue first = firsts.putIfAbsent(same, cue);
            if (first != null && !first.source().equals(cue.source())) {
                out.report(Cues.name(cue) + " is fired twice: line " + first.source().line() + " of " + first.source().file()
                        + " fires it too")
                        .found("two lines", "one line, with a count where several are meant")
                        .remedy("take one line out, or write one line with '2 x " + cue.what() + "'")
                        .about(Cues.subject(cue))
                        .at(cue.source());
            }
        }
    }

    private record Same(String soundtrack, String what, String position, long seenUs, double tiltDeg) {
    }
}
