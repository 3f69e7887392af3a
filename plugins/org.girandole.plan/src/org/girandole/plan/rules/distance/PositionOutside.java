package org.girandole.plan.rules.distance;

import java.util.List;
import org.girandole.physics.geometry.Point2;
import org.girandole.physics.geometry.Polygon;
import org.girandole.plan.Plan;
import org.girandole.plan.Severity;
import org.girandole.plan.Subject;
import org.girandole.plan.rules.Basis;
import org.girandole.plan.rules.Findings;
import org.girandole.plan.rules.Quantity;
import org.girandole.plan.rules.Rule;
import org.girandole.plan.rules.RuleInfo;
import org.girandole.plan.script.Site;

/** A position that does not lie in the area that is cleared of people. */
public final class PositionOutside implements Rule {
    private static final RuleInfo INFO = new RuleInfo("position-outside", RuleInfo.Family.DISTANCE, Severity.ERROR,
            "A position lies outside of the boundary.",
            "Either the coordinates are wrong, and then so is every distance, or shells are fired where nobody keeps people away.",
            Basis.COMMON_PRACTICE);

    @Override
    public RuleInfo info() {
        return INFO;
    }

    @Override
    public void check(Plan plan, Findings out) {
        Ground.of(plan).boundary().ifPresent(boundary -> plan.script().site().ifPresent(site -> site.positions()
                .forEach(position -> check(position, (Polygon) boundary.shape(), out))));
    }

    private static void check(Site.Position position, Polygon boundary, Findings out) {
        Point2 at = new Point2(position.at().xM(), position.at().yM());
        if (!boundary.contains(at)) {
            String outside = Quantity.metres(boundary.edgeDistanceM(at)) + " outside of the boundary";
            out.report("Position " + position.name() + " lies " + outside)
                    .found(outside, "inside of the boundary")
                    .remedy("correct the coordinates of the position or of the boundary")
                    .about(new Subject(List.of(), List.of(position.name())))
                    .at(position.source());
        }
    }
}
