package org.girandole.plan.rules.distance;

import java.util.Map;
import java.util.Optional;
import org.girandole.plan.Plan;
import org.girandole.plan.Severity;
import org.girandole.plan.rules.Findings;
import org.girandole.plan.rules.Quantity;
import org.girandole.plan.rules.Rule;
import org.girandole.plan.rules.RuleInfo;
import org.girandole.plan.stock.Charges;

/** More charge than may travel in one vehicle without the whole of the transport rules, or more than anybody knows. */
public final class ChargeLimit implements Rule {
    private static final double MOST_POINTS = 1000;
    private static final RuleInfo INFO = new RuleInfo("charge-limit", RuleInfo.Family.DISTANCE, Severity.WARNING,
            "The show's charge is more than may travel in one vehicle without the full transport rules.",
            "Above the limit the vehicle needs its plates, its papers and a driver with a certificate. Found out at the "
                    + "roadside it ends the show.",
            "ADR 1.1.3.6: points (net explosive kg times 50 for 1.1G to 1.3G, 3 for 1.4G, 0 for 1.4S) of at most 1000; "
                    + "checked against summaries of it");

    @Override
    public RuleInfo info() {
        return INFO;
    }

    @Override
    public void check(Plan plan, Findings out) {
        double points = 0;
        double kg = 0;
        long unknown = 0;
        for (Map.Entry<Charges.Hazard, Charges.Sum> entry : Charges.of(plan).hazards().entrySet()) {
            Optional<Double> factor = entry.getKey().hazardClass().flatMap(ChargeLimit::factor);
            kg += entry.getValue().kg();
            points += factor.orElse(0.0) * entry.getValue().kg();
            unknown += factor.isPresent() ? entry.getValue().withoutCharge() : entry.getValue().pieces();
        }
        if (points > MOST_POINTS) {
            String more = unknown > 0 ? ", and " + Quantity.count(unknown, "piece", "pieces") + " without class or charge not counted" : "";
            out.report("The show holds " + Quantity.number(kg) + " kg of charge, " + Math.round(points) + " points of transport" + more)
                    .found(Math.round(points) + " points" + more, "at most " + Math.round(MOST_POINTS) + " in one vehicle")
                    .remedy("split the load over several vehicles, or carry it under the full rules")
                    .data(Map.of("points", Long.toString(Math.round(points))))
                    .at(plan.script().show().source());
        }
    }

    /** Points a kilogram by hazard class; empty for classes that this table does not know. */
    private static Optional<Double> factor(String hazardClass) {
        return switch (hazardClass) {
            case "1.1G", "1.2G", "1.3G" -> Optional.of(50.0);
            case "1.4G" -> Optional.of(3.0);
            case "1.4S" -> Optional.of(0.0);
            default -> Optional.empty();
        };
    }
}
