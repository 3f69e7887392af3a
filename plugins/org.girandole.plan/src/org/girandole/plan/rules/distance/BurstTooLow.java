package org.girandole.plan.rules.distance;

import java.util.LinkedHashMap;
import java.util.Map;
import org.girandole.plan.Plan;
import org.girandole.plan.PlannedCue;
import org.girandole.plan.Severity;
import org.girandole.plan.rules.Basis;
import org.girandole.plan.rules.Cues;
import org.girandole.plan.rules.Findings;
import org.girandole.plan.rules.Quantity;
import org.girandole.plan.rules.RuleInfo;
import org.girandole.plan.rules.SharingRule;
import org.girandole.plan.rules.Workings;
import org.girandole.plan.script.Point;

/** A burst whose stars reach the ground. Said once for each effect and position. */
public final class BurstTooLow implements SharingRule {
    private static final RuleInfo INFO = new RuleInfo("burst-too-low", RuleInfo.Family.DISTANCE, Severity.ERROR,
            "A burst is so low that its stars reach the ground burning.",
            "Burning stars set the site, and the next rack, on fire.",
            "geometry: half the spread below the burst");

    @Override
    public RuleInfo info() {
        return INFO;
    }

    @Override
    public void check(Workings workings, Findings out) {
        Plan plan = workings.plan();
        Ground ground = Ground.of(workings);
        Map<Key, Low> lowest = new LinkedHashMap<>();
        for (PlannedCue cue : plan.cues()) {
            if (cue.burst().isPresent() && cue.effect().spreadM().isPresent()) {
                double heightM = cue.burst().orElseThrow().at().zM() - ground.firedFrom(cue).map(Point::zM).orElse(0.0);
                lowest.merge(new Key(cue.effect().name(), cue.position()), new Low(cue, heightM), (a, b) -> b.heightM() < a.heightM() ? b : a);
            }
        }
        lowest.values().stream().filter(low -> low.heightM() < low.neededM()).forEach(low -> report(low, out));
    }

    private static void report(Low low, Findings out) {
        PlannedCue cue = low.cue();
        String estimated = cue.burst().orElseThrow().estimated() ? " (estimated)" : "";
        out.report(Cues.name(cue) + " bursts at " + Quantity.metres(low.heightM()) + estimated + ", and its stars reach "
                + Quantity.metres(low.neededM()) + " down")
                .found("burst " + Quantity.metres(low.heightM()) + estimated + " above its tube", "at least " + Quantity.metres(low.neededM()))
                .basis(Basis.script("spread " + Quantity.metres(cue.effect().spreadM().orElseThrow()), cue.effect().source()) + "; " + INFO.basis())
                .remedy("tilt it less, use a smaller effect, or correct its apex or spread")
                .about(Cues.subject(cue))
                .at(cue.source());
    }

    /** A burst and its height above the place it is fired from. */
    private record Low(PlannedCue cue, double heightM) {
        double neededM() {
            return cue.effect().spreadM().orElseThrow() / 2;
        }
    }

    private record Key(String effect, String position) {
    }
}
