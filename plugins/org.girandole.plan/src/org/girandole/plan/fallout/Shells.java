package org.girandole.plan.fallout;

import java.util.Optional;
import org.girandole.physics.Estimate;
import org.girandole.physics.Figures;
import org.girandole.physics.PhysicsInputException;
import org.girandole.physics.fallout.Debris;
import org.girandole.physics.fallout.FalloutSpec;
import org.girandole.physics.fallout.Scatter;
import org.girandole.physics.flight.Body;
import org.girandole.physics.flight.Burst;
import org.girandole.physics.flight.Estimates;
import org.girandole.physics.flight.Launch;
import org.girandole.physics.geometry.Point3;
import org.girandole.plan.PlannedCue;
import org.girandole.plan.Timing.RiseSource;
import org.girandole.plan.script.Effect;
import org.girandole.plan.script.Point;

/** Shells of a plan as bodies that fly. */
final class Shells {
    private static final double MM_PER_M = 1000;
    private static final double G_PER_KG = 1000;

    private Shells() {
    }

    /** A shell and how it is lifted. */
    record Shell(Body body, double speedMps, long riseUs, double burstScatterUs, Debris debris, boolean estimated) {
        FalloutSpec spec(String key, Point from, PlannedCue cue) {
            return spec(key, new Launch(new Point3(from.xM(), from.yM(), Math.max(0, from.zM())), speedMps, Math.abs(cue.aim().tiltDeg()),
                    cue.aim().bearingDeg()));
        }

        /** Fired like {@code other}, at its own speed. */
        FalloutSpec spec(String key, Launch other) {
            Launch launch = new Launch(other.muzzle(), speedMps, other.tiltDeg(), other.azimuthDeg());
            return new FalloutSpec(key, body, launch, Optional.of(new Burst.After(riseUs)), Optional.of(debris),
                    Scatter.USUAL.withBurstUs(burstScatterUs));
        }
    }

    /** @throws PhysicsInputException if it cannot be known how the shell flies */
    static Shell of(PlannedCue cue, SiteAir air, FlightMemory memory) {
        Effect effect = cue.effect();
        if (effect.calibreM().isEmpty()) {
            throw new PhysicsInputException("no calibre of " + effect.name(), "a calibre to estimate the shell's size by",
                    "add the calibre to the effect");
        }
        double calibreMm = effect.calibreM().get() * MM_PER_M;
        double massKg = effect.massKg().orElseGet(() -> Estimates.massKg(calibreMm).value());
        if (effect.massKg().isPresent() && effect.chargeKg().filter(charge -> charge > massKg).isPresent()) {
            throw new PhysicsInputException("a charge of " + Figures.of(effect.chargeKg().get() * G_PER_KG) + " g in a mass of "
                    + Figures.of(massKg * G_PER_KG) + " g", "a mass of the whole shell, which is more than its charge", "correct charge or mass");
        }
        double apexM = effect.apexM().orElseGet(() -> Estimates.apexM(calibreMm).value());
        double spreadM = effect.spreadM().orElseGet(() -> Estimates.spreadM(calibreMm).value());
        Body body = Body.sphere(massKg, Estimates.shellDiameterMm(calibreMm).value() / MM_PER_M);
        long riseUs = cue.timing().riseUs() - cue.timing().leadUs();
        boolean estimated = effect.massKg().isEmpty() || effect.apexM().isEmpty() || effect.spreadM().isEmpty()
                || cue.timing().riseSource() == RiseSource.ESTIMATED;
        double scatterUs = cue.timing().riseToleranceUs() > 0 ? cue.timing().riseToleranceUs() : Scatter.USUAL.burstUs();
        return new Shell(body, speedMps(body, riseUs, apexM, pairKnown(cue), air, memory), riseUs, scatterUs, Debris.usual(spreadM), estimated);
    }

    /**
     * A shell of which nothing but the calibre is known.
     *
     * @throws PhysicsInputException if there are no data on shells of that calibre
     */
    static Shell usual(double calibreMm, SiteAir air, FlightMemory memory) {
        Estimate rise = Estimates.riseUs(calibreMm);
        Body body = Body.estimated(calibreMm);
        long riseUs = Math.round(rise.value());
        double scatterUs = Math.round(Math.max(rise.value() - rise.least(), rise.most() - rise.value()));
        return new Shell(body, speedMps(body, riseUs, Estimates.apexM(calibreMm).value(), false, air, memory), riseUs, scatterUs,
                Debris.usual(Estimates.spreadM(calibreMm).value()), true);
    }

    /** Whether rise and apex of a cue's shell are both written or measured, and its size is known. */
    static boolean pairKnown(PlannedCue cue) {
        return cue.effect().apexM().isPresent() && cue.effect().calibreM().isPresent() && cue.timing().riseSource() != RiseSource.ESTIMATED;
    }

    /** Where rise or apex is an estimate they may not go together; the height then counts, because it decides how far the shell can come. */
    private static double speedMps(Body body, long riseUs, double apexM, boolean bothKnown, SiteAir air, FlightMemory memory) {
        try {
            return memory.speedFromRiseAndApex(body, riseUs, apexM, air);
        } catch (PhysicsInputException e) {
            if (bothKnown) {
                throw e;
            }
            return memory.speedFromApex(body, apexM, air);
        }
    }
}
