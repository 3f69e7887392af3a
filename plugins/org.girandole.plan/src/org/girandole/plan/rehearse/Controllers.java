package org.girandole.plan.rehearse;

import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.girandole.plan.script.Control;
import org.girandole.plan.script.FiringSystem;
import org.girandole.plan.script.Rehearsal.Drift;

/** The models of a show's controller. */
public final class Controllers {
    /** Any number would do; the same each time makes the same log each time. */
    private static final long SEED = 1;

    private Controllers() {
    }

    /** The controller of a firing system with a clock that is off by this much, above nought fast. */
    public static ControllerModel of(FiringSystem system, double ppm) {
        Control control = system.control();
        // Ageing makes a slow clock slower and a fast one faster, whichever its sign: the worse is rehearsed.
        double ageing = ppm < 0 ? -Math.abs(control.ageingPpmPerDay()) : Math.abs(control.ageingPpmPerDay());
        return new ControllerModel(Math.max(1, system.stepUs().orElse(1L)), control.lockFrames(), control.lossFrames(), new OwnClock(ppm, ageing),
                control.jitterUs(), control.smoothPpm(), control.lateToleranceUs(), control.linkUs(), SEED);
    }

    /** The deviations that must be rehearsed: one, or both ways; empty when nobody knows how far the clock may be off. */
    static List<Double> deviations(FiringSystem system, Optional<Drift> drift) {
        Optional<Double> ppm = drift.map(Drift::ppm).or(system::clockPpm);
        if (ppm.isEmpty()) {
            return List.of();
        }
        Drift.Way way = drift.map(Drift::way).orElse(Drift.Way.EITHER);
        return switch (way) {
            case SLOW -> List.of(-ppm.get());
            case FAST -> List.of(ppm.get());
            case EITHER -> ppm.get() == 0 ? List.of(0.0) : List.of(-ppm.get(), ppm.get());
        };
    }

    /** A deviation in words. */
    static String words(double ppm) {
        String size = String.format(Locale.ROOT, "%.3f", Math.abs(ppm)).replaceAll("\\.?0+$", "");
        return ppm == 0 ? "exact" : (ppm < 0 ? "slow by " : "fast by ") + size + " ppm";
    }
}
