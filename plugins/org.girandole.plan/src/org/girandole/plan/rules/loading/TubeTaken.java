package org.girandole.plan.rules.loading;

import java.util.HashMap;
import java.util.Map;
import java.util.Optional;
import org.girandole.plan.Plan;
import org.girandole.plan.PlannedCue;
import org.girandole.plan.Severity;
import org.girandole.plan.rules.Cues;
import org.girandole.plan.rules.Findings;
import org.girandole.plan.rules.RuleInfo;
import org.girandole.plan.rules.ScriptIndex;
import org.girandole.plan.rules.SharingRule;
import org.girandole.plan.rules.Workings;
import org.girandole.plan.script.Rack;

/** Two firings out of one tube. Nobody reloads during a show, nor between the soundtracks of one night. */
public final class TubeTaken implements SharingRule {
    private static final RuleInfo INFO = new RuleInfo("tube-taken", RuleInfo.Family.LOADING, Severity.ERROR,
            "Two cues use the same tube.",
            "A second shell on top of a first one is a burst in the tube waiting to happen; nobody reloads a hot tube.",
            "a tube is loaded once a night");

    @Override
    public RuleInfo info() {
        return INFO;
    }

    @Override
    public void check(Workings workings, Findings out) {
        Plan plan = workings.plan();
        ScriptIndex index = workings.index();
        Map<Place, PlannedCue> owners = new HashMap<>();
        for (PlannedCue cue : plan.cues()) {
            Optional<Integer> tubes = index.rack(cue).map(Rack::tubes);
            if (tubes.isEmpty()) {
                continue;
            }
            PlannedCue.Tube first = cue.tube().orElseThrow();
            int last = (int) Math.min(tubes.get(), first.tube() + cue.pieces() - 1L);
            for (int tube = first.tube(); tube <= last; tube++) {
                PlannedCue owner = owners.putIfAbsent(new Place(first.rack(), tube), cue);
                if (owner != null) {
                    out.report("Tube " + tube + " of rack " + first.rack() + " is wanted by " + Cues.name(cue) + ", but "
                            + Cues.name(owner) + " is loaded in it")
                            .found("two cues for tube " + tube, "one")
                            .remedy("give one of them another tube, or leave the tube out and let it be chosen")
                            .about(Cues.subject(cue, first.rack()))
                            .data(Map.of("rack", first.rack(), "tube", Integer.toString(tube)))
                            .at(Cues.tubeSource(cue));
                    break;
                }
            }
        }
    }

    private record Place(String rack, int tube) {
    }
}
