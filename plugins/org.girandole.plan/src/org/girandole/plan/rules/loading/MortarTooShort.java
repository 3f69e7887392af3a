package org.girandole.plan.rules.loading;

import java.util.LinkedHashMap;
import java.util.Map;
import org.girandole.plan.Plan;
import org.girandole.plan.PlannedCue;
import org.girandole.plan.Severity;
import org.girandole.plan.allocate.Fit;
import org.girandole.plan.rules.Basis;
import org.girandole.plan.rules.Cues;
import org.girandole.plan.rules.Findings;
import org.girandole.plan.rules.Quantity;
import org.girandole.plan.rules.RuleInfo;
import org.girandole.plan.rules.ScriptIndex;
import org.girandole.plan.rules.SharingRule;
import org.girandole.plan.rules.Workings;
import org.girandole.plan.script.Rack;

/** A tube too short to bring its shell up to height. Said once for each effect and rack. */
public final class MortarTooShort implements SharingRule {
    private static final RuleInfo INFO = new RuleInfo("mortar-too-short", RuleInfo.Family.LOADING, Severity.ERROR,
            "A tube is too short for what is loaded in it.",
            "The shell leaves too slowly, bursts low, and may come down burning.",
            "the maker's shortest tube; else inside length 5 times the calibre, 4 times from 200 mm on: " + Basis.COMMON_PRACTICE);

    @Override
    public RuleInfo info() {
        return INFO;
    }

    @Override
    public void check(Workings workings, Findings out) {
        Plan plan = workings.plan();
        ScriptIndex index = workings.index();
        Map<Pair, PlannedCue> pairs = new LinkedHashMap<>();
        for (PlannedCue cue : plan.cues()) {
            index.rack(cue).flatMap(rack -> rack.runOf(cue.tube().orElseThrow().tube()))
                    .ifPresent(run -> pairs.putIfAbsent(new Pair(cue.effect().name(), cue.tube().orElseThrow().rack(), run), cue));
        }
        pairs.forEach((pair, cue) -> pair.run().lengthM().ifPresent(lengthM -> Fit.shortestTubeM(cue.effect())
                .filter(neededM -> lengthM < neededM).ifPresent(neededM -> out
                        .report(pair.effect() + " needs a tube of " + Quantity.millimetres(neededM) + ", but tube "
                                + cue.tube().orElseThrow().tube() + " of rack " + pair.rack() + " is " + Quantity.millimetres(lengthM)
                                + " long inside")
                        .found(Quantity.millimetres(lengthM), "at least " + Quantity.millimetres(neededM))
                        .basis(cue.effect().tubeLengthM().isPresent()
                                ? Basis.script("tube length of " + pair.effect(), cue.effect().source()) : INFO.basis())
                        .remedy("load it into a longer tube")
                        .about(Cues.subject(cue, pair.rack()))
                        .data(Map.of("rack", pair.rack(), "lengthMm", Quantity.number(neededM * 1000)))
                        .at(Cues.tubeSource(cue)))));
    }

    private record Pair(String effect, String rack, Rack.TubeRun run) {
    }
}
