package org.girandole.plan.rules.distance;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.girandole.physics.geometry.Point2;
import org.girandole.plan.Plan;
import org.girandole.plan.PlannedCue;
import org.girandole.plan.Severity;
import org.girandole.plan.Subject;
import org.girandole.plan.rules.Findings;
import org.girandole.plan.rules.Quantity;
import org.girandole.plan.rules.RuleInfo;
import org.girandole.plan.rules.SharingRule;
import org.girandole.plan.rules.Workings;
import org.girandole.plan.script.Site;

/** A position in use nearer to the audience than any loading zone may be, whatever the table says. */
public final class PositionTooClose implements SharingRule {
    private static final double CLEAR_M = 30;
    private static final RuleInfo INFO = new RuleInfo("position-too-close", RuleInfo.Family.DISTANCE, Severity.ERROR,
            "A position lies inside the distance that is kept clear around any firing site.",
            "The crew loads and wires there for hours. Nobody else may be so near to loaded tubes, even before the show.",
            "Explosives Regulations 2013 (Canada), ss. 432-438: a loading zone of at least 30 m around the firing site");

    @Override
    public RuleInfo info() {
        return INFO;
    }

    @Override
    public void check(Workings workings, Findings out) {
        Plan plan = workings.plan();
        Ground ground = Ground.of(workings);
        Map<String, PlannedCue> used = new LinkedHashMap<>();
        plan.cues().forEach(cue -> used.putIfAbsent(cue.position(), cue));
        plan.script().site().ifPresent(site -> site.positions().stream()
                .filter(position -> used.containsKey(position.name()) && ground.nonsense().outsideM(position.at()).isEmpty())
                .forEach(position -> check(position, ground, out)));
    }

    private static void check(Site.Position position, Ground ground, Findings out) {
        Point2 at = new Point2(position.at().xM(), position.at().yM());
        for (Ground.Place place : ground.audience()) {
            double foundM = place.shape().contains(at) ? 0 : at.distanceM(place.shape().nearest(at));
            if (foundM < CLEAR_M) {
                out.report("Position " + position.name() + " lies " + Quantity.metres(foundM) + " from " + place.name())
                        .found(Quantity.metres(foundM), "at least " + Quantity.metres(CLEAR_M))
                        .remedy("move the position, or keep the audience back")
                        .about(new Subject(List.of(place.name()), List.of(position.name())))
                        .at(position.source());
            }
        }
    }
}
