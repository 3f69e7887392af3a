package org.girandole.plan.fallout;

import java.util.Optional;
import org.girandole.physics.PhysicsInputException;
import org.girandole.physics.fallout.Debris;
import org.girandole.physics.fallout.FalloutSpec;
import org.girandole.physics.fallout.Scatter;
import org.girandole.physics.flight.Air;
import org.girandole.physics.flight.Body;
import org.girandole.physics.flight.Burst;
import org.girandole.physics.flight.Estimates;
import org.girandole.physics.flight.Launch;
import org.girandole.physics.flight.MuzzleFit;
import org.girandole.physics.geometry.Point3;
import org.girandole.plan.PlannedCue;
import org.girandole.plan.Timing.RiseSource;
import org.girandole.plan.script.Effect;
import org.girandole.plan.script.Point;

/** Shells of a plan as bodies that fly. */
final class Shells {
    private static final double MM_PER_M = 1000;

    private Shells() {
    }

    /** A shell and how it is lifted. */
    record Shell(Body body, double speedMps, long riseUs, double burstScatterUs, Debris debris, boolean estimated) {
        FalloutSpec spec(String key, Point from, PlannedCue cue) {
            Launch launch = new Launch(new Point3(from.xM(), from.yM(), Math.max(0, from.zM())), speedMps, Math.abs(cue.aim().tiltDeg()),
                    cue.aim().bearingDeg());
            return new FalloutSpec(key, body, launch, Optional.of(new Burst.After(riseUs)), Optional.of(debris),
                    Scatter.USUAL.withBurstUs(burstScatterUs));
        }
    }

    /** @throws PhysicsInputException if it cannot be known how the shell flies */
    static Shell of(PlannedCue cue, Air air) {
        Effect effect = cue.effect();
        if (effect.calibreM().isEmpty()) {
            throw new PhysicsInputException("no calibre of " + effect.name(), "a calibre to estimate the shell's size by",
                    "add the calibre to the effect");
        }
        double calibreMm = effect.calibreM().get() * MM_PER_M;
        double massKg = effect.massKg().orElseGet(() -> Estimates.massKg(calibreMm).value());
        double apexM = effect.apexM().orElseGet(() -> Estimates.apexM(calibreMm).value());
        double spreadM = effect.spreadM().orElseGet(() -> Estimates.spreadM(calibreMm).value());
        Body body = Body.sphere(massKg, Estimates.shellDiameterMm(calibreMm).value() / MM_PER_M);
        long riseUs = cue.timing().riseUs() - cue.timing().leadUs();
        boolean estimated = effect.massKg().isEmpty() || effect.apexM().isEmpty() || effect.spreadM().isEmpty()
                || cue.timing().riseSource() == RiseSource.ESTIMATED;
        double scatterUs = cue.timing().riseToleranceUs() > 0 ? cue.timing().riseToleranceUs() : Scatter.USUAL.burstUs();
        return new Shell(body, speedMps(body, riseUs, apexM, air), riseUs, scatterUs, Debris.usual(spreadM), estimated);
    }

    /** Rise and apex as written may not go together; the height then counts, because it decides how far the shell can come. */
    private static double speedMps(Body body, long riseUs, double apexM, Air air) {
        try {
            return MuzzleFit.fromRiseAndApex(body, riseUs, apexM, air).speedMps();
        } catch (PhysicsInputException e) {
            return MuzzleFit.fromApex(body, apexM, air).speedMps();
        }
    }
}
