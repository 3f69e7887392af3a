package org.girandole.plan.schedule;

import java.util.Optional;
import org.girandole.physics.Estimate;
import org.girandole.physics.PhysicsInputException;
import org.girandole.physics.flight.Estimates;
import org.girandole.plan.PlannedCue.Aim;
import org.girandole.plan.PlannedCue.Burst;
import org.girandole.plan.Timing.RiseSource;
import org.girandole.plan.script.Effect;
import org.girandole.plan.script.Point;

/**
 * Where a burst stands in the sky. Upright it is the apex above the tube. Tilted, the shell flies the parabola of a point mass whose
 * upright flight is at the apex at the end of its rise: {@code v0 = apex / t + g t / 2}, {@code aside = v0 sin(tilt) t}, {@code height = v0
 * cos(tilt) t - g t^2 / 2}. Drag and wind are left out; a tilted burst counts as estimated for that.
 */
public final class Bursts {
    /** Standard acceleration of free fall, m/s2, ISO 80000-3. */
    public static final double G = 9.80665;

    private Bursts() {
    }

    /** Empty for what does not rise, and for what rises to a height that nobody knows. */
    static Optional<Burst> of(Effect effect, Rise rise, Aim aim, Point from) {
        if (!effect.kind().rises()) {
            return Optional.empty();
        }
        return apexM(effect).map(apex -> {
            boolean estimated = effect.apexM().isEmpty() || rise.source() == RiseSource.ESTIMATED;
            return aim.tiltDeg() == 0 || rise.us() <= 0
                    ? new Burst(new Point(from.xM(), from.yM(), from.zM() + apex), estimated)
                    : new Burst(tilted(apex, rise.us() / 1e6, aim, from), true);
        });
    }

    /** The catalogue's apex in metres, else an estimate from the calibre; empty without a calibre, and when the apex written cannot be meant. */
    public static Optional<Double> apexM(Effect effect) {
        return effect.refused().contains("apex") ? Optional.empty() : effect.apexM().or(() -> estimatedApex(effect).map(Estimate::value));
    }

    /** The estimate that stands in for a missing apex. */
    public static Optional<Estimate> estimatedApex(Effect effect) {
        try {
            return effect.calibreM().map(calibre -> Estimates.apexM(Calibres.millimetres(calibre)));
        } catch (PhysicsInputException e) {
            return Optional.empty();
        }
    }

    private static Point tilted(double apexM, double t, Aim aim, Point from) {
        double tilt = Math.toRadians(Math.abs(aim.tiltDeg()));
        double bearing = Math.toRadians(aim.bearingDeg());
        double speed = apexM / t + G * t / 2;
        double aside = speed * Math.sin(tilt) * t;
        double height = speed * Math.cos(tilt) * t - G * t * t / 2;
        return new Point(from.xM() + aside * Math.sin(bearing), from.yM() + aside * Math.cos(bearing), from.zM() + height);
    }
}
