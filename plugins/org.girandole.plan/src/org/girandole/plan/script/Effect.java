package org.girandole.plan.script;

import java.util.Collections;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;

/**
 * One item of the catalogue, {@code like} already resolved. Whatever the script does not say is empty here; the plan decides what
 * is estimated, and marks it.
 *
 * @param calibreM inside diameter of the tube it is made for, metres
 * @param rise firing to burst
 * @param apexM height of the burst above the tube, metres
 * @param spreadM diameter of the burst, metres
 * @param lastsUs how long it is seen after burst (or after firing, for ground effects), microseconds
 * @param chargeKg net explosive content of one item, kilograms
 * @param hazardClass such as {@code 1.3G}
 * @param unNumber such as {@code UN0335}
 * @param massKg mass of the projectile, kilograms
 * @param tubeLengthM shortest inside tube length the maker asks for, metres
 * @param shots shots of a candle or cake
 * @param shotGapUs time between shots, microseconds
 * @param report whether the main effect is a report
 * @param refused first words of the lines that are written of it and cannot be meant, such as {@code mass}: it is not as if nothing had been
 *        written, and nothing may be estimated in their place
 */
public record Effect(String name, String label, EffectKind kind, Optional<Double> calibreM, Optional<Measured> rise,
        Optional<Double> apexM, Optional<Double> spreadM, Optional<Long> lastsUs, Optional<Double> chargeKg,
        Optional<String> hazardClass, Optional<String> unNumber, Optional<String> colour, Optional<String> igniter,
        Optional<Double> massKg, Optional<Double> tubeLengthM, Optional<Integer> shots, Optional<Long> shotGapUs,
        Optional<TiltRange> shotTilt, boolean report, Optional<String> like, Set<String> refused, SourceRef source) {
    public Effect {
        refused = Collections.unmodifiableSet(new TreeSet<>(refused));
    }

    /** An effect all of which can be meant. */
    public Effect(String name, String label, EffectKind kind, Optional<Double> calibreM, Optional<Measured> rise, Optional<Double> apexM,
            Optional<Double> spreadM, Optional<Long> lastsUs, Optional<Double> chargeKg, Optional<String> hazardClass,
            Optional<String> unNumber, Optional<String> colour, Optional<String> igniter, Optional<Double> massKg, Optional<Double> tubeLengthM,
            Optional<Integer> shots, Optional<Long> shotGapUs, Optional<TiltRange> shotTilt, boolean report, Optional<String> like,
            SourceRef source) {
        this(name, label, kind, calibreM, rise, apexM, spreadM, lastsUs, chargeKg, hazardClass, unNumber, colour, igniter, massKg, tubeLengthM,
                shots, shotGapUs, shotTilt, report, like, Set.of(), source);
    }
}
