package org.girandole.plan.rules.distance;

import java.util.List;
import java.util.Optional;
import org.girandole.plan.Plan;
import org.girandole.plan.Severity;
import org.girandole.plan.Subject;
import org.girandole.plan.fallout.Nonsense;
import org.girandole.plan.rules.Basis;
import org.girandole.plan.rules.Findings;
import org.girandole.plan.rules.Quantity;
import org.girandole.plan.rules.RuleInfo;
import org.girandole.plan.rules.SharingRule;
import org.girandole.plan.rules.Workings;
import org.girandole.plan.script.Site;
import org.girandole.plan.script.SourceRef;

/** A position, or a rack of it, that does not lie in the area that is cleared of people. */
public final class PositionOutside implements SharingRule {
    private static final RuleInfo INFO = new RuleInfo("position-outside", RuleInfo.Family.DISTANCE, Severity.ERROR,
            "A position lies outside of the boundary.",
            "Either the coordinates are wrong, and then so is every distance, or shells are fired where nobody keeps people away.",
            Basis.COMMON_PRACTICE);

    @Override
    public RuleInfo info() {
        return INFO;
    }

    @Override
    public void check(Workings workings, Findings out) {
        Plan plan = workings.plan();
        Nonsense nonsense = workings.nonsense();
        plan.script().site().ifPresent(site -> site.positions().forEach(position -> {
            report("Position " + position.name() + " lies ", nonsense.outsideM(position.at()), position, position.source(), out);
            if (nonsense.outsideM(position.at()).isEmpty()) {
                plan.script().racks().stream().filter(rack -> rack.position().equals(position.name()))
                        .forEach(rack -> report("Rack " + rack.name() + " stands ", nonsense.outsideM(rack.from(position.at())), position,
                                rack.source(), out));
            }
        }));
    }

    private static void report(String what, Optional<Double> outsideM, Site.Position position, SourceRef source, Findings out) {
        if (outsideM.isPresent()) {
            String outside = Quantity.metres(outsideM.get()) + " outside of the boundary";
            out.report(what + outside)
                    .found(outside, "inside of the boundary")
                    .remedy("correct the coordinates of the position or of the boundary")
                    .about(new Subject(List.of(), List.of(position.name())))
                    .at(source);
        }
    }
}
