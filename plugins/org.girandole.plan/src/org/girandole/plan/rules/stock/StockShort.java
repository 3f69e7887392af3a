package org.girandole.plan.rules.stock;

import java.util.Map;
import org.girandole.plan.Plan;
import org.girandole.plan.Severity;
import org.girandole.plan.Subject;
import org.girandole.plan.rules.Basis;
import org.girandole.plan.rules.Findings;
import org.girandole.plan.rules.Rule;
import org.girandole.plan.rules.RuleInfo;
import org.girandole.plan.script.Lot;
import org.girandole.plan.stock.Stock;

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
        for (Stock.Line line : Stock.of(plan).effects()) {
            String effect = line.effect().name();
            boolean shortOfAll = line.missing().filter(missing -> missing > 0).isPresent();
            if (shortOfAll) {
                report(out, effect, line.needed(), line.inStock().orElseThrow(), Subject.of(effect), line.lots().get(0).lot());
            }
            for (Stock.LotLine lot : line.lots()) {
                if (lot.missing() > 0 && !(shortOfAll && line.lots().size() == 1)) {
                    report(out, "lot " + lot.lot().name() + " of " + effect, lot.needed(), lot.lot().count(),
                            Subject.of(lot.lot().name(), effect), lot.lot());
                }
            }
        }
    }

    private static void report(Findings out, String what, long used, long there, Subject subject, Lot lot) {
        out.report("The show uses " + used + " of " + what + ", but there " + (there == 1 ? "is " : "are ") + there)
                .found(used + " used", there + " in stock")
                .basis(Basis.script("lot " + lot.name() + ", count " + lot.count(), lot.source()))
                .remedy("take " + (used - there) + " out of the show, or bring in another lot")
                .about(subject)
                .data(Map.of("short", Long.toString(used - there)))
                .at(lot.source());
    }
}
