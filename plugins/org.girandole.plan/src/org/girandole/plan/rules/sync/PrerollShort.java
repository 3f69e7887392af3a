package org.girandole.plan.rules.sync;

import java.util.HashMap;
import java.util.Map;
import org.girandole.plan.Plan;
import org.girandole.plan.PlannedCue;
import org.girandole.plan.PlannedSoundtrack;
import org.girandole.plan.Severity;
import org.girandole.plan.Subject;
import org.girandole.plan.rules.Cues;
import org.girandole.plan.rules.Findings;
import org.girandole.plan.rules.Quantity;
import org.girandole.plan.rules.Rule;
import org.girandole.plan.rules.RuleInfo;

/** Too little timecode before something is fired. Counted to the first firing, or to the first note where nothing is fired before it. */
public final class PrerollShort implements Rule {
    static final long LEAST_US = 10_000_000;
    private static final RuleInfo INFO = new RuleInfo("preroll-short", RuleInfo.Family.SYNC, Severity.WARNING,
            "There is too little timecode before the first firing.",
            "The controller needs seconds to lock, and the crew needs to see that it has. A minute is usual.",
            "10 to 30 s of timecode before the first cue: common practice, no source");

    @Override
    public RuleInfo info() {
        return INFO;
    }

    @Override
    public void check(Plan plan, Findings out) {
        Map<String, Long> beginsUs = new HashMap<>();
        plan.soundtracks().forEach(track -> track.script().prerollUs().ifPresent(prerollUs -> beginsUs.put(track.name(), -prerollUs)));
        Map<String, PlannedCue> firsts = new HashMap<>();
        Map<String, Long> earliestUs = new HashMap<>();
        for (PlannedCue cue : plan.cues()) {
            earliestUs.merge(cue.soundtrack(), cue.timing().fireUs(), Math::min);
            // What would be fired before the timecode is not fired at all.
            if (cue.timing().fireUs() >= beginsUs.getOrDefault(cue.soundtrack(), Long.MAX_VALUE)) {
                firsts.merge(cue.soundtrack(), cue, (a, b) -> b.timing().fireUs() < a.timing().fireUs() ? b : a);
            }
        }
        for (PlannedSoundtrack track : plan.soundtracks()) {
            PlannedCue first = firsts.get(track.name());
            track.script().prerollUs().ifPresent(prerollUs -> {
                long untilUs = first == null ? 0 : Math.min(0, first.timing().fireUs());
                long runUs = prerollUs + untilUs;
                if (runUs < LEAST_US) {
                    String until = untilUs == 0 ? "the first note" : "the first firing, " + Cues.name(first);
                    // With more timecode, what is fired before it now will be fired as well.
                    long neededUs = LEAST_US - Math.min(0, earliestUs.getOrDefault(track.name(), 0L));
                    out.report("Soundtrack " + track.name() + " has only " + Quantity.span(runUs) + " of timecode before " + until)
                            .found(Quantity.span(runUs), "at least " + Quantity.span(LEAST_US))
                            .remedy("make the preroll at least " + Quantity.atLeast(neededUs) + "; 60 s is usual")
                            .about(Subject.of(track.name()))
                            .data(Map.of("prerollUs", Long.toString(neededUs)))
                            .at(track.script().source());
                }
            });
        }
    }
}
