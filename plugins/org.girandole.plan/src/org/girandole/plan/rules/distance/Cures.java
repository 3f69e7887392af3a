package org.girandole.plan.rules.distance;

import static org.girandole.physics.separation.Quantity.CALIBRE;
import static org.girandole.physics.separation.Quantity.HEIGHT;
import static org.girandole.physics.separation.Quantity.TILT;
import static org.girandole.physics.separation.Quantity.WIND;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.girandole.physics.separation.FiringCase;
import org.girandole.physics.separation.SeparationCheck;
import org.girandole.plan.PlannedCue;
import org.girandole.plan.rules.Quantity;

/**
 * What would cure a distance that does not hold, found by asking the same table again: how far to move, how little to tilt, how small a
 * shell, how little wind. Each cure alone is enough by the table; none is looked for that makes an effect another one.
 */
final class Cures {
    private static final double MM_PER_M = 1000;
    private static final int TENTHS = 10;

    private Cures() {
    }

    static String of(Distances.Held held) {
        List<String> cures = new ArrayList<>();
        if (held.check().requirement().assessmentNeeded()) {
            cures.add("ask somebody competent, or change the cue so that the table has a number for it");
        } else {
            double shortM = Math.ceil(held.check().shortM().orElse(0.0) * TENTHS - 1e-6) / TENTHS;
            cures.add("move it " + Quantity.metres(shortM) + " farther from " + held.place().name()
                    + (held.place().audience() ? ", or keep people back as far" : ""));
        }
        tilt(held).ifPresent(cures::add);
        wind(held).ifPresent(cures::add);
        smaller(held).ifPresent(cures::add);
        return String.join("; or ", cures);
    }

    private static boolean holds(Distances.Held held, FiringCase firing) {
        return SeparationCheck.of(held.table(), firing, held.at(), held.place().shape()).holds();
    }

    /** The largest whole number of degrees, less than what is written, that holds. Cakes and candles lean by themselves. */
    private static Optional<String> tilt(Distances.Held held) {
        PlannedCue cue = held.cue();
        double tiltDeg = Math.abs(cue.aim().tiltDeg());
        if (tiltDeg == 0 || cue.effect().shotTilt().isPresent()) {
            return Optional.empty();
        }
        for (int less = (int) Math.ceil(tiltDeg) - 1; less >= 0; less--) {
            FiringCase firing = held.firing().tilted(less, cue.aim().bearingDeg());
            if (holds(held, firing)) {
                return Optional.of(less == 0 ? "fire it upright" : "tilt it by " + less + " deg at most");
            }
        }
        return Optional.empty();
    }

    /** The strongest wind from the same side, less than that of the site, that holds. */
    private static Optional<String> wind(Distances.Held held) {
        Optional<Double> speed = held.firing().value(WIND);
        if (speed.isEmpty() || held.firing().windFromDeg().isEmpty()) {
            return Optional.empty();
        }
        for (int tenths = (int) Math.ceil(speed.get() * TENTHS - 1e-6) - 1; tenths >= 0; tenths--) {
            double less = (double) tenths / TENTHS;
            if (holds(held, held.firing().with(WIND, less))) {
                return Optional.of("fire it in wind and gusts of " + Quantity.number(less) + " m/s at most");
            }
        }
        return Optional.empty();
    }

    /**
     * The largest calibre in whole millimetres, less than what is written but not by more than half, that holds; bursting as much lower as it
     * is smaller, if it must.
     */
    private static Optional<String> smaller(Distances.Held held) {
        Optional<Double> calibre = Optional.ofNullable(held.firing().values().get(CALIBRE));
        if (calibre.isEmpty()) {
            return Optional.empty();
        }
        Optional<Double> height = Optional.ofNullable(held.firing().values().get(HEIGHT));
        for (int mm = (int) Math.ceil(calibre.get() * MM_PER_M - 1e-6) - 1; mm * 2 >= calibre.get() * MM_PER_M; mm--) {
            FiringCase smaller = held.firing().with(CALIBRE, mm / MM_PER_M);
            String words = "use a calibre of " + mm + " mm at most";
            if (holds(held, smaller)) {
                return Optional.of(words);
            }
            if (height.isPresent()) {
                double lowerM = Math.floor(height.get() * mm / MM_PER_M / calibre.get() * TENTHS) / TENTHS;
                if (holds(held, smaller.with(HEIGHT, lowerM))) {
                    return Optional.of(words + ", bursting no higher than " + Quantity.metres(lowerM));
                }
            }
        }
        return Optional.empty();
    }
}
