package org.girandole.plan.rules.timing;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.girandole.physics.fallout.Debris;
import org.girandole.plan.Plan;
import org.girandole.plan.PlannedCue;
import org.girandole.plan.PlannedSoundtrack.Hold;
import org.girandole.plan.Severity;
import org.girandole.plan.Subject;
import org.girandole.plan.rules.Basis;
import org.girandole.plan.rules.Cues;
import org.girandole.plan.rules.Findings;
import org.girandole.plan.rules.Quantity;
import org.girandole.plan.rules.RuleInfo;
import org.girandole.plan.rules.ScriptIndex;
import org.girandole.plan.rules.SharingRule;
import org.girandole.plan.rules.Shift;
import org.girandole.plan.rules.Workings;

/**
 * Bursts before a hold whose debris may still be coming down in it. Said once for each hold and effect. What burns or is fired in it is for
 * hold-violated to say.
 */
public final class HoldDebris implements SharingRule {
    /** Terminal speed of the lightest casing that counts. */
    private static final double SLOWEST_MPS = Debris.usual(0).slowestMps();
    private static final RuleInfo INFO = new RuleInfo("hold-debris", RuleInfo.Family.TIMING, Severity.WARNING,
            "Debris of a burst may still come down inside a hold.",
            "Cold casing sinks for half a minute after the stars have gone out, and drifts to where somebody passes below.",
            "debris sinks at 6 m/s or faster: " + Basis.COMMON_PRACTICE);

    @Override
    public RuleInfo info() {
        return INFO;
    }

    @Override
    public void check(Workings workings, Findings out) {
        Plan plan = workings.plan();
        ScriptIndex index = workings.index();
        Map<Key, List<PlannedCue>> late = new LinkedHashMap<>();
        for (PlannedCue cue : workings.oncePerPlace()) {
            if (cue.burst().isPresent()) {
                index.soundtrack(cue).ifPresent(track -> track.holds().stream()
                        .filter(hold -> Cues.goneUs(cue) < hold.fromUs() && downUs(cue) >= hold.fromUs())
                        .forEach(hold -> late.computeIfAbsent(new Key(hold, cue.what()), k -> new ArrayList<>()).add(cue)));
            }
        }
        late.forEach((key, cues) -> report(plan, key, cues, out));
    }

    private static void report(Plan plan, Key key, List<PlannedCue> cues, Findings out) {
        PlannedCue last = cues.stream().max(Comparator.comparingLong(HoldDebris::downUs)).orElseThrow();
        PlannedCue.Burst burst = last.burst().orElseThrow();
        String others = cues.size() == 1 ? "" : " and of " + Quantity.count(cues.size() - 1, "firing", "firings") + " before it";
        long earlierUs = Shift.lastSeenUs(plan, last, downUs(last) - key.hold().fromUs() + 1);
        out.report("Debris of " + Cues.name(last) + others + " may still come down in the hold '" + key.hold().reason() + "'")
                .found("down by " + Quantity.moment(downUs(last)) + ", from " + Quantity.metres(burst.at().zM())
                        + (burst.estimated() ? " (estimated)" : ""), "by " + Quantity.moment(key.hold().fromUs()) + ", where the hold begins")
                .basis(Basis.script("hold '" + key.hold().reason() + "'", key.hold().source()) + "; " + INFO.basis())
                .remedy("move " + (cues.size() == 1 ? "the cue" : "each of these cues") + " at least " + Quantity.span(earlierUs) + " earlier, or see that what passes keeps out of the fallout")
                .about(new Subject(Cues.subject(last).names(), List.of()))
                .data(Map.of("earlierUs", Long.toString(earlierUs)))
                .at(last.source());
    }

    /** When the lightest debris of the last burst is down, scatter counted against it. */
    private static long downUs(PlannedCue cue) {
        double heightM = Math.max(0, cue.burst().orElseThrow().at().zM());
        return Cues.lastSeenUs(cue) + cue.timing().toleranceUs() + Math.round(heightM / SLOWEST_MPS * 1e6);
    }

    private record Key(Hold hold, String what) {
    }
}
