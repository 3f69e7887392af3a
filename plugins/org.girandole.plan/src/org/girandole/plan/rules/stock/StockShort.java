package org.girandole.plan.rules.stock;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.girandole.plan.Plan;
import org.girandole.plan.PlannedCue;
import org.girandole.plan.Severity;
import org.girandole.plan.Subject;
import org.girandole.plan.rules.Basis;
import org.girandole.plan.rules.Findings;
import org.girandole.plan.rules.Rule;
import org.girandole.plan.rules.RuleInfo;
import org.girandole.plan.script.Lot;

/** More used than there is. Chains count every item; a cue that names its lot counts against that lot as well. */
public final class StockShort implements Rule {
    private static final RuleInfo INFO = new RuleInfo("stock-short", RuleInfo.Family.STOCK, Severity.ERROR,
            "The show uses more of an effect than there is in stock.",
            "Somebody finds out while loading and puts in something else, with another rise and another height.",
            "the script's lots");

    @Override
    public RuleInfo info() {
        return INFO;
    }

    @Override
    public void check(Plan plan, Findings out) {
        Map<String, Long> byEffect = new LinkedHashMap<>();
        Map<String, Long> byLot = new LinkedHashMap<>();
        for (PlannedCue cue : plan.cues()) {
            byEffect.merge(cue.effect().name(), (long) cue.pieces(), Long::sum);
            cue.script().lot().ifPresent(lot -> byLot.merge(lot, (long) cue.pieces(), Long::sum));
        }
        Map<String, List<Lot>> lots = new LinkedHashMap<>();
        plan.script().lots().forEach(lot -> lots.computeIfAbsent(lot.effect(), k -> new ArrayList<>()).add(lot));
        byEffect.forEach((effect, used) -> {
            List<Lot> stock = lots.getOrDefault(effect, List.of());
            long there = stock.stream().mapToLong(Lot::count).sum();
            if (!stock.isEmpty() && used > there) {
                report(out, effect, used, there, Subject.of(effect), stock.get(0));
            }
        });
        plan.script().lots().forEach(lot -> {
            long used = byLot.getOrDefault(lot.name(), 0L);
            if (used > lot.count() && lots.get(lot.effect()).size() > 1) {
                report(out, "lot " + lot.name() + " of " + lot.effect(), used, lot.count(), Subject.of(lot.name(), lot.effect()), lot);
            }
        });
    }

    private static void report(Findings out, String what, long used, long there, Subject subject, Lot lot) {
        out.report("The show uses " + used + " of " + what + ", but there are " + there)
                .found(used + " used", there + " in stock")
                .basis(Basis.script("lot " + lot.name() + ", count " + lot.count(), lot.source()))
                .remedy("take " + (used - there) + " out of the show, or bring in another lot")
                .about(subject)
                .data(Map.of("short", Long.toString(used - there)))
                .at(lot.source());
    }
}
