package org.girandole.music;

import java.math.BigDecimal;
import java.math.RoundingMode;

/**
 * A stretch of one meter with a constant tempo or one ramp. Offsets are from its start; {@code x} in beats,
 * {@code t} in microseconds.
 *
 * <p>With {@code v} in beats per microsecond and a ramp {@code v0 -> v1} over {@code L} beats:
 * linear in beats {@code t(x) = L / (v1 - v0) * ln(1 + (v1 - v0) x / (L v0))};
 * linear in time {@code T = 2 L / (v0 + v1)}, {@code x(t) = v0 t + (v1 - v0) t^2 / (2 T)}. These are elementary
 * integrals of {@code dt = dx / v}. They are evaluated in double precision with correctly specified functions
 * ({@link StrictMath}): relative error below 1e-14, hence below 0.001 us in a ramp of an hour.
 */
final class TempoSegment {
    private static final Rational US_PER_MINUTE = Rational.of(60_000_000);
    /** Decimals kept of an irrational time: below its error, and few enough for exact sums to stay small. */
    private static final int US_DECIMALS = 9;
    /** A microsecond is about 2e-6 of a beat, so beats need more decimals to come back to the same microsecond. */
    private static final int BEAT_DECIMALS = 14;

    final int bar;
    final Rational startBeats;
    final Rational startUs;
    final Meter meter;
    final Rational bpm;
    /** {@code null} when the tempo is constant. */
    final Ramp ramp;

    /** The far end of a ramp. */
    record Ramp(Rational toBpm, Rational lengthBeats, RampLaw law) {
    }

    TempoSegment(int bar, Rational startBeats, Rational startUs, Meter meter, Rational bpm, Ramp ramp) {
        this.bar = bar;
        this.startBeats = startBeats;
        this.startUs = startUs;
        this.meter = meter;
        this.bpm = bpm;
        this.ramp = ramp != null && ramp.toBpm().equals(bpm) ? null : ramp;
    }

    /** Negative offsets reach back before the first bar, where a ramp has not begun. */
    Rational usAt(Rational x) {
        if (ramp == null || x.signum() <= 0) {
            return x.times(US_PER_MINUTE).dividedBy(bpm);
        }
        if (ramp.law() == RampLaw.LINEAR_IN_TIME && x.equals(ramp.lengthBeats())) {
            return rampTimeUs();
        }
        double v0 = perUs(bpm);
        double dv = perUs(ramp.toBpm().minus(bpm));
        double length = ramp.lengthBeats().toDouble();
        double beats = x.toDouble();
        double us;
        if (ramp.law() == RampLaw.LINEAR_IN_BEATS) {
            us = length / dv * StrictMath.log1p(dv * beats / (length * v0));
        } else {
            double a = dv / (2 * rampTimeUs().toDouble());
            us = 2 * beats / (v0 + StrictMath.sqrt(v0 * v0 + 4 * a * beats));
        }
        return decimal(us, US_DECIMALS);
    }

    Rational beatsAt(Rational t) {
        if (ramp == null || t.signum() <= 0) {
            return t.times(bpm).dividedBy(US_PER_MINUTE);
        }
        double v0 = perUs(bpm);
        double dv = perUs(ramp.toBpm().minus(bpm));
        double us = t.toDouble();
        double beats;
        if (ramp.law() == RampLaw.LINEAR_IN_BEATS) {
            double length = ramp.lengthBeats().toDouble();
            beats = length * v0 / dv * StrictMath.expm1(us * dv / length);
        } else {
            beats = us * (v0 + dv * us / (2 * rampTimeUs().toDouble()));
        }
        return decimal(beats, BEAT_DECIMALS);
    }

    Rational bpmAt(Rational x) {
        return ramp == null || x.signum() <= 0 ? bpm : bpmInRamp(x);
    }

    private Rational bpmInRamp(Rational x) {
        Rational span = ramp.toBpm().minus(bpm);
        if (ramp.law() == RampLaw.LINEAR_IN_BEATS) {
            return bpm.plus(span.times(x).dividedBy(ramp.lengthBeats()));
        }
        return bpm.plus(span.times(usAt(x)).dividedBy(rampTimeUs()));
    }

    private Rational rampTimeUs() {
        return ramp.lengthBeats().times(2).times(US_PER_MINUTE).dividedBy(bpm.plus(ramp.toBpm()));
    }

    private static double perUs(Rational bpm) {
        return bpm.toDouble() / 60_000_000.0;
    }

    private static Rational decimal(double value, int decimals) {
        return Rational.of(new BigDecimal(value).setScale(decimals, RoundingMode.HALF_EVEN));
    }
}
