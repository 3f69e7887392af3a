package org.girandole.plan.schedule;

import java.util.Optional;
import org.girandole.plan.PlannedCue.Aim;
import org.girandole.plan.script.Point;
import org.girandole.plan.script.ScoreItem;
import org.girandole.plan.script.ScoreItem.Lean;
import org.girandole.plan.script.TiltRange;

/** Which way the tubes of a cue point. */
final class Aims {
    private static final Aim UPRIGHT = new Aim(0, Lean.SIDE, 0);

    private Aims() {
    }

    /** Aim of shot {@code shot}, from 0, of a cue at a place. */
    static Aim of(ScoreItem.Cue cue, int shot, Point from, SitePlan site) {
        if (cue.fan().isPresent()) {
            return aim(fanDeg(cue.fan().get(), shot, cue.count()), Lean.SIDE, Optional.empty(), from, site);
        }
        return cue.tilt().map(tilt -> aim(tilt.angleDeg(), tilt.lean(), tilt.bearingDeg(), from, site)).orElse(UPRIGHT);
    }

    /** Angles spread evenly over the shots; a single shot stands in the middle. */
    static double fanDeg(TiltRange fan, int shot, int count) {
        double share = count == 1 ? 0.5 : (double) shot / (count - 1);
        return fan.fromDeg() + share * (fan.toDeg() - fan.fromDeg());
    }

    /**
     * The audience looks against the bearing that leads from the place to it, so that its right hand lies a quarter turn back from that
     * bearing. A negative angle leans the other way.
     */
    private static Aim aim(double angleDeg, Lean lean, Optional<Double> bearingDeg, Point from, SitePlan site) {
        if (angleDeg == 0) {
            return new Aim(0, lean, 0);
        }
        double audience = site.audienceBearingDeg(from);
        double towards = switch (lean) {
            case SIDE -> audience - 90;
            case TOWARD_AUDIENCE -> audience;
            case AWAY_FROM_AUDIENCE -> audience + 180;
            case BEARING -> bearingDeg.orElse(0.0);
        };
        return new Aim(angleDeg, lean, compass(angleDeg < 0 ? towards + 180 : towards));
    }

    private static double compass(double degrees) {
        double positive = degrees % 360 < 0 ? degrees % 360 + 360 : degrees % 360;
        return positive >= 360 ? 0 : positive + 0.0;
    }
}
