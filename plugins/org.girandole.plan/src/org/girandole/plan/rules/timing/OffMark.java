package org.girandole.plan.rules.timing;

import java.util.HashMap;
import java.util.Map;
import java.util.NavigableMap;
import java.util.TreeMap;
import org.girandole.plan.Plan;
import org.girandole.plan.PlannedCue;
import org.girandole.plan.PlannedSoundtrack;
import org.girandole.plan.Severity;
import org.girandole.plan.rules.Basis;
import org.girandole.plan.rules.Cues;
import org.girandole.plan.rules.Findings;
import org.girandole.plan.rules.Quantity;
import org.girandole.plan.rules.Rule;
import org.girandole.plan.rules.RuleInfo;
import org.girandole.plan.script.FiringSystem;
import org.girandole.plan.script.TimeExpr;

/**
 * A cue written as a clock time that comes very near a mark without meeting it. Cues written from marks, bars or beats are meant
 * the way they are.
 */
public final class OffMark implements Rule {
    /** Nearer than this and not on the mark looks like a slip; farther away looks like intent. */
    static final long NEAR_US = 250_000;
    private static final RuleInfo INFO = new RuleInfo("off-mark", RuleInfo.Family.TIMING, Severity.WARNING,
            "A cue written as a clock time just misses a mark.",
            "A quarter of a second beside a hit is seen as late. A time copied by hand goes stale when the mark moves.",
            Basis.COMMON_PRACTICE);

    @Override
    public RuleInfo info() {
        return INFO;
    }

    @Override
    public void check(Plan plan, Findings out) {
        long stepUs = plan.script().firingSystem().flatMap(FiringSystem::stepUs).orElse(0L);
        Map<String, NavigableMap<Long, String>> marks = new HashMap<>();
        for (PlannedSoundtrack track : plan.soundtracks()) {
            NavigableMap<Long, String> byTime = new TreeMap<>();
            track.marksUs().forEach((name, us) -> byTime.putIfAbsent(us, name));
            marks.put(track.name(), byTime);
        }
        for (PlannedCue cue : Cues.oncePerPlace(plan.cues())) {
            TimeExpr at = cue.script().at();
            long seenUs = cue.timing().seenUs();
            boolean clock = at.anchor() instanceof TimeExpr.AtClock written && at.steps().isEmpty() && written.us() == seenUs;
            Map.Entry<Long, String> mark = clock ? nearest(marks.get(cue.soundtrack()), seenUs) : null;
            if (mark == null) {
                continue;
            }
            long missUs = Math.abs(seenUs - mark.getKey());
            // A miss below the controller's step cannot be fired any better.
            if (missUs > stepUs && missUs <= NEAR_US) {
                out.report(Cues.name(cue) + " misses the mark " + mark.getValue() + " by " + Quantity.span(missUs))
                        .found(Quantity.moment(seenUs) + ", " + Quantity.span(missUs)
                                + (seenUs < mark.getKey() ? " before " : " after ") + mark.getValue(),
                                "on the mark at " + Quantity.moment(mark.getKey()) + ", or more than " + Quantity.span(NEAR_US)
                                        + " away from it")
                        .remedy("write 'at " + mark.getValue() + "' in place of the clock time")
                        .about(Cues.subject(cue))
                        .data(Map.of("mark", mark.getValue()))
                        .at(at.source());
            }
        }
    }

    private static Map.Entry<Long, String> nearest(NavigableMap<Long, String> marks, long us) {
        if (marks == null) {
            return null;
        }
        Map.Entry<Long, String> before = marks.floorEntry(us);
        Map.Entry<Long, String> after = marks.ceilingEntry(us);
        if (before == null || after == null) {
            return before == null ? after : before;
        }
        return us - before.getKey() <= after.getKey() - us ? before : after;
    }
}
