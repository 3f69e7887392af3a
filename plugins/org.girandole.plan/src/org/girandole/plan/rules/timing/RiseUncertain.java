package org.girandole.plan.rules.timing;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.girandole.plan.Plan;
import org.girandole.plan.PlannedCue;
import org.girandole.plan.Severity;
import org.girandole.plan.Subject;
import org.girandole.plan.Timing;
import org.girandole.plan.rules.Basis;
import org.girandole.plan.rules.Cues;
import org.girandole.plan.rules.Findings;
import org.girandole.plan.rules.Quantity;
import org.girandole.plan.rules.Rule;
import org.girandole.plan.rules.RuleInfo;

/** An effect whose error budget is larger than the show allows. Said once for each effect or chain and lot. */
public final class RiseUncertain implements Rule {
    private static final RuleInfo INFO = new RuleInfo("rise-uncertain", RuleInfo.Family.TIMING, Severity.WARNING,
            "An effect scatters more than the show allows its bursts to be off.",
            "However well the cue is fired, the burst will miss its beat; the eye sees it most where several burst together.",
            "the script's 'sync within'");

    @Override
    public RuleInfo info() {
        return INFO;
    }

    @Override
    public void check(Plan plan, Findings out) {
        Optional<Long> within = plan.script().show().syncWithinUs();
        if (within.isEmpty()) {
            return;
        }
        Map<Key, PlannedCue> worst = new LinkedHashMap<>();
        Map<Key, Integer> uses = new LinkedHashMap<>();
        for (PlannedCue cue : plan.cues()) {
            Key key = new Key(cue.what(), cue.lot());
            uses.merge(key, 1, Integer::sum);
            worst.merge(key, cue, (a, b) -> b.timing().toleranceUs() > a.timing().toleranceUs() ? b : a);
        }
        worst.forEach((key, cue) -> {
            Timing timing = cue.timing();
            if (timing.toleranceUs() <= within.get()) {
                return;
            }
            String lot = key.lot().map(name -> " of lot " + name).orElse("");
            out.report(key.what() + lot + " may be seen " + Quantity.span(timing.toleranceUs())
                    + " off its moment (" + Quantity.count(uses.get(key), "firing", "firings") + ")")
                    .found(Quantity.plusMinus(timing.toleranceUs()) + ": rise " + Quantity.span(timing.riseToleranceUs()) + ", half a step "
                            + Quantity.span(timing.stepToleranceUs())
                            + (cue.items().isEmpty() ? "" : ", links of the chain " + Quantity.span(timing.chainToleranceUs())),
                            Quantity.plusMinus(within.get()))
                    .basis(Basis.script("sync within " + Quantity.span(within.get()), plan.script().show().source()))
                    .remedy("use a lot with less scatter, keep it off sharp beats, or allow more with 'sync within "
                            + Quantity.span(timing.toleranceUs()) + "'")
                    .about(new Subject(Cues.subject(cue).names(), List.of()))
                    .data(Map.of("toleranceUs", Long.toString(timing.toleranceUs())))
                    .at(cue.chain().map(chain -> chain.source()).orElse(cue.effect().source()));
        });
    }

    private record Key(String what, Optional<String> lot) {
    }
}
