package org.girandole.plan.rules.timing;

import java.util.HashMap;
import java.util.Map;
import java.util.Optional;
import org.girandole.plan.Plan;
import org.girandole.plan.PlannedCue;
import org.girandole.plan.PlannedSoundtrack;
import org.girandole.plan.Severity;
import org.girandole.plan.rules.Basis;
import org.girandole.plan.rules.Cues;
import org.girandole.plan.rules.Findings;
import org.girandole.plan.rules.Quantity;
import org.girandole.plan.rules.RuleInfo;
import org.girandole.plan.rules.SharingRule;
import org.girandole.plan.rules.Shift;
import org.girandole.plan.rules.Workings;

/** A chain that begins in its section, or in the music, and ends after it. */
public final class ChainOverruns implements SharingRule {
    private static final RuleInfo INFO = new RuleInfo("chain-overruns", RuleInfo.Family.TIMING, Severity.WARNING,
            "A chain goes on after its section or its music has ended.",
            "A chain cannot be stopped once it is lit. Its last items burst into the next picture, or into the silence after the music.",
            "the script's own sections and length");

    @Override
    public RuleInfo info() {
        return INFO;
    }

    @Override
    public void check(Workings workings, Findings out) {
        Plan plan = workings.plan();
        Map<String, Map<String, Limit>> limits = new HashMap<>();
        plan.soundtracks().forEach(track -> limits.put(track.name(), sections(track)));
        for (PlannedCue cue : workings.oncePerPlace()) {
            if (cue.items().isEmpty()) {
                continue;
            }
            Optional.ofNullable(limits.get(cue.soundtrack())).map(byName -> byName.get(cue.section()))
                    .filter(limit -> cue.timing().seenUs() <= limit.endUs() && lastSeenUs(cue) > limit.endUs())
                    .ifPresent(limit -> report(cue, limit, out));
        }
    }

    private static Map<String, Limit> sections(PlannedSoundtrack track) {
        Map<String, Limit> limits = new HashMap<>();
        track.lengthUs().ifPresent(lengthUs -> limits.put("", new Limit("the music", lengthUs,
                Basis.script("length of " + track.name() + " " + Quantity.moment(lengthUs), track.script().source()))));
        track.sections().forEach(section -> limits.put(section.name(), new Limit("section " + section.name(), section.toUs(),
                Basis.script("section " + section.name() + " ends at " + Quantity.moment(section.toUs()), section.source()))));
        return limits;
    }

    private static void report(PlannedCue cue, Limit limit, Findings out) {
        long overUs = lastSeenUs(cue) - limit.endUs();
        long earlierUs = Shift.writtenUs(overUs);
        out.report(Cues.name(cue) + ": its last item bursts " + Quantity.span(overUs) + " after " + limit.name() + " has ended")
                .found("last burst at " + Quantity.moment(lastSeenUs(cue)), "by " + Quantity.moment(limit.endUs()))
                .basis(limit.basis())
                .remedy("begin the chain " + Quantity.span(earlierUs) + " earlier, use fewer items, or shorten its gap")
                .about(Cues.subject(cue))
                .data(Map.of("earlierUs", Long.toString(earlierUs)))
                .at(cue.source());
    }

    /** As the script means it: rounding to the system's step is not the chain's fault. */
    private static long lastSeenUs(PlannedCue cue) {
        return cue.items().get(cue.items().size() - 1).seenUs() - cue.timing().roundingUs();
    }

    private record Limit(String name, long endUs, String basis) {
    }
}
