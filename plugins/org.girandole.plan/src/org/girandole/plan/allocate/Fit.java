package org.girandole.plan.allocate;

import java.util.Optional;
import org.girandole.plan.PlannedCue.Aim;
import org.girandole.plan.script.Effect;
import org.girandole.plan.script.Rack;
import org.girandole.plan.script.ScoreItem.Lean;

/** Whether a piece and a tube fit. The same answers serve allocation and the rules about loading. */
public final class Fit {
    /**
     * How far a tube may be from the calibre asked for, metres. Half a millimetre takes up rounding, not the difference between 75 mm and 3
     * in: whether those may stand for each other is for a person to say.
     */
    public static final double CALIBRE_TOLERANCE_M = 0.0005;
    /** How far a tube of a fixed fan may be from the tilt asked for, degrees. Common practice, no source. */
    public static final double FAN_TOLERANCE_DEG = 2.5;
    /** How many calibres long a tube is inside at least, where the maker states nothing. Lower end of common practice, no source. */
    private static final double CALIBRES_LONG = 5;
    private static final double LARGE_CALIBRES_LONG = 4;
    private static final double LARGE_M = 0.2;
    /** Takes up the rounding of sums of angles, degrees. */
    private static final double ROUNDING_DEG = 1e-6;

    private Fit() {
    }

    /** Whether a piece of this calibre goes into a tube of that one, both in metres. */
    public static boolean calibre(double pieceM, double tubeM) {
        return Math.abs(pieceM - tubeM) <= CALIBRE_TOLERANCE_M;
    }

    /** Whether tube {@code number}, from 1, of the rack can point there. */
    public static boolean tilt(Rack rack, int number, Aim aim) {
        if (rack.fixedFan()) {
            boolean sideways = aim.lean() == Lean.SIDE || aim.tiltDeg() == 0;
            return sideways && Math.abs(fanDeg(rack, number) - aim.tiltDeg()) <= FAN_TOLERANCE_DEG + ROUNDING_DEG;
        }
        double from = Math.min(rack.tilt().fromDeg(), rack.tilt().toDeg()) - ROUNDING_DEG;
        double to = Math.max(rack.tilt().fromDeg(), rack.tilt().toDeg()) + ROUNDING_DEG;
        if (aim.lean() == Lean.SIDE) {
            return aim.tiltDeg() >= from && aim.tiltDeg() <= to;
        }
        // A lean to the front or the back: the rack is turned, so that its range counts either way round.
        double size = Math.abs(aim.tiltDeg());
        return size >= from && size <= to || -size >= from && -size <= to;
    }

    /** The shortest inside length of a tube that brings the effect up to height, metres; empty for what does not rise, and without a calibre. */
    public static Optional<Double> shortestTubeM(Effect effect) {
        return effect.tubeLengthM().or(() -> effect.kind().rises()
                ? effect.calibreM().map(m -> m * (m < LARGE_M ? CALIBRES_LONG : LARGE_CALIBRES_LONG)) : Optional.empty());
    }

    /** The angle at which tube {@code number}, from 1, of a fixed fan stands, degrees. */
    public static double fanDeg(Rack rack, int number) {
        int last = rack.tubes();
        double share = last <= 1 ? 0.5 : (number - 1.0) / (last - 1);
        return rack.tilt().fromDeg() + share * (rack.tilt().toDeg() - rack.tilt().fromDeg());
    }
}
