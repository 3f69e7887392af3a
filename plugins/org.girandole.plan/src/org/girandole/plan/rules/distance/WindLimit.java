package org.girandole.plan.rules.distance;

import org.girandole.plan.Plan;
import org.girandole.plan.Severity;
import org.girandole.plan.Subject;
import org.girandole.plan.rules.Findings;
import org.girandole.plan.rules.Quantity;
import org.girandole.plan.rules.Rule;
import org.girandole.plan.rules.RuleInfo;
import org.girandole.plan.script.Site;

/** Wind in which somebody's rules would have stopped the show, or wind that nobody wrote down. */
public final class WindLimit implements Rule {
    private static final double STOP_MPS = 20 * 0.44704;
    private static final RuleInfo INFO = new RuleInfo("wind-limit", RuleInfo.Family.DISTANCE, Severity.WARNING,
            "The wind is above a published limit, or not known.",
            "Wind carries burning debris and shells that did not burst beyond the distances that hold in calm air.",
            "lowest published stop value found: 20 mph (8.94 m/s), Cincinnati municipal code 1213; also 10 m/s (Tokyo), 40 "
                    + "km/h (Montreal), 9 m/s (1. SprengV annex 6)");

    @Override
    public RuleInfo info() {
        return INFO;
    }

    @Override
    public void check(Plan plan, Findings out) {
        plan.script().site().filter(site -> !plan.cues().isEmpty()).ifPresent(site -> {
            if (site.refused().stream().anyMatch(part -> part.part() == Site.Part.WIND)) {
                return;
            }
            if (site.wind().isEmpty()) {
                out.report("Site " + site.name() + " says nothing of the wind, so every distance was computed for calm air")
                        .found("no wind", "the strongest wind in which the show will be fired")
                        .remedy("add the wind, such as 'wind from 240 deg at 5 m/s gusting 8 m/s'")
                        .about(Subject.of(site.name()))
                        .at(site.source());
                return;
            }
            Site.Wind wind = site.wind().get();
            double strongest = Math.max(wind.speedMps(), wind.gustMps().orElse(0.0));
            if (strongest > STOP_MPS) {
                out.report("The show is planned for wind of " + Quantity.number(strongest) + " m/s")
                        .found(Quantity.number(strongest) + " m/s", "at most " + Quantity.number(STOP_MPS) + " m/s")
                        .remedy("set the limit at which the show is held, and ask your authority for its own")
                        .about(Subject.of(site.name()))
                        .at(wind.source());
            }
        });
    }
}
