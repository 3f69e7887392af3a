package org.girandole.plan.rules.distance;

import static org.girandole.physics.separation.Quantity.CALIBRE;
import static org.girandole.physics.separation.Quantity.HEIGHT;
import static org.girandole.physics.separation.Quantity.STRUCTURE;
import static org.girandole.physics.separation.Quantity.TILT;

import java.util.Optional;
import org.girandole.physics.PhysicsInputException;
import org.girandole.physics.flight.Estimates;
import org.girandole.physics.separation.ArticleKind;
import org.girandole.physics.separation.FiringCase;
import org.girandole.physics.separation.Flag;
import org.girandole.plan.PlannedCue;
import org.girandole.plan.script.Effect;
import org.girandole.plan.script.EffectKind;
import org.girandole.plan.script.Site;

/** A cue in the words of distance tables. */
final class Firings {
    private static final double MM_PER_M = 1000;

    private Firings() {
    }

    /**
     * What is fired. The height is that of an upright flight, which is the larger; a gust counts as the wind; racks that hold a chain
     * count as of unproved strength, because nothing in a script proves one.
     *
     * @param heightKnown whether the height may be believed; else it is left out, and what a table computes from it has no number
     * @param aboveM how far the firing place lies above what is to be protected, metres; below counts as level
     */
    static FiringCase of(PlannedCue cue, boolean heightKnown, double aboveM, Optional<Site.Wind> wind) {
        Effect effect = cue.effect();
        FiringCase firing = FiringCase.of(kind(effect.kind()));
        if (effect.calibreM().isPresent()) {
            firing = firing.with(CALIBRE, effect.calibreM().get());
        }
        if (heightKnown && effect.apexM().isPresent()) {
            firing = firing.with(HEIGHT, effect.apexM().get());
        } else if (heightKnown) {
            Optional<Double> estimate = estimatedApexM(effect);
            firing = estimate.isPresent() ? firing.withEstimated(HEIGHT, estimate.get()) : firing;
        }
        if (aboveM > 0) {
            firing = firing.with(STRUCTURE, aboveM);
        }
        if (effect.report()) {
            firing = firing.with(Flag.REPORT);
        }
        if (cue.chain().isPresent()) {
            firing = firing.with(Flag.CHAIN_IN_UNPROVED_RACK);
        }
        firing = aimed(firing, cue);
        return wind.isPresent() ? firing.inWind(wind.get().fromDeg(), Math.max(wind.get().speedMps(), wind.get().gustMps().orElse(0.0)))
                : firing;
    }

    /** Cakes and candles whose shots lean both ways count as leaning everywhere by the largest of their angles. */
    private static FiringCase aimed(FiringCase firing, PlannedCue cue) {
        double own = Math.abs(cue.aim().tiltDeg());
        double shots = cue.effect().shotTilt().map(tilt -> Math.max(Math.abs(tilt.fromDeg()), Math.abs(tilt.toDeg()))).orElse(0.0);
        if (shots > 0) {
            return firing.with(TILT, own + shots);
        }
        return own > 0 ? firing.tilted(own, cue.aim().bearingDeg()) : firing.with(TILT, 0);
    }

    private static Optional<Double> estimatedApexM(Effect effect) {
        if (!effect.kind().rises() || effect.calibreM().isEmpty()) {
            return Optional.empty();
        }
        try {
            return Optional.of(Estimates.apexM(effect.calibreM().get() * MM_PER_M).value());
        } catch (PhysicsInputException e) {
            // Outside of what was ever measured: the table then has no height to go by and asks for an assessment.
            return Optional.empty();
        }
    }

    private static ArticleKind kind(EffectKind kind) {
        return switch (kind) {
            case SHELL -> ArticleKind.SHELL;
            case SALUTE -> ArticleKind.SALUTE;
            case MINE -> ArticleKind.MINE;
            case COMET -> ArticleKind.COMET;
            case CANDLE -> ArticleKind.CANDLE;
            case CAKE -> ArticleKind.CAKE;
            case FOUNTAIN -> ArticleKind.FOUNTAIN;
            case WHEEL -> ArticleKind.WHEEL;
            case FLARE -> ArticleKind.FLARE;
            case ROCKET -> ArticleKind.ROCKET;
        };
    }
}
