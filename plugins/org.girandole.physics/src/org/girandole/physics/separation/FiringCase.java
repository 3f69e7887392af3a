package org.girandole.physics.separation;

import java.util.Collections;
import java.util.EnumMap;
import java.util.EnumSet;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;

import org.girandole.physics.Require;

/**
 * One article fired at one place, seen from one direction. Immutable; each {@code with} method returns a changed copy.
 *
 * @param kind the article
 * @param values what is known, in the unit of the quantity
 * @param estimated which of the values are estimates
 * @param flags the facts stated
 * @param tiltAzimuthDeg where the tube leans, degrees clockwise from north; empty if not known
 * @param windFromDeg where the wind comes from, degrees clockwise from north; empty if not known
 * @param towardsDeg azimuth from the firing place to what is to be protected, degrees clockwise from north
 */
public record FiringCase(ArticleKind kind, Map<Quantity, Double> values, Set<Quantity> estimated, Set<Flag> flags,
        OptionalDouble tiltAzimuthDeg, OptionalDouble windFromDeg, double towardsDeg) {
    public FiringCase {
        EnumMap<Quantity, Double> copy = new EnumMap<>(Quantity.class);
        values.forEach((quantity, value) -> copy.put(quantity, Require.notNegative(value, quantity.word(), "")));
        values = Collections.unmodifiableMap(copy);
        estimated = copyOf(Quantity.class, estimated);
        flags = withImplied(kind, flags);
        Require.finite(towardsDeg, "direction to what is protected", "deg");
    }

    private static Set<Flag> withImplied(ArticleKind kind, Set<Flag> flags) {
        EnumSet<Flag> copy = EnumSet.noneOf(Flag.class);
        copy.addAll(flags);
        if (kind == ArticleKind.SALUTE) {
            copy.add(Flag.REPORT);
        }
        return Collections.unmodifiableSet(copy);
    }

    private static <E extends Enum<E>> Set<E> copyOf(Class<E> type, Set<E> set) {
        EnumSet<E> copy = EnumSet.noneOf(type);
        copy.addAll(set);
        return Collections.unmodifiableSet(copy);
    }

    /** An article of which nothing else is known yet. */
    public static FiringCase of(ArticleKind kind) {
        return new FiringCase(kind, Map.of(), Set.of(), Set.of(), OptionalDouble.empty(), OptionalDouble.empty(), 0);
    }

    /** With a measured or declared value. */
    public FiringCase with(Quantity quantity, double value) {
        return put(quantity, value, false);
    }

    /** With an estimated value. */
    public FiringCase withEstimated(Quantity quantity, double value) {
        return put(quantity, value, true);
    }

    private FiringCase put(Quantity quantity, double value, boolean isEstimated) {
        Map<Quantity, Double> newValues = new EnumMap<>(Quantity.class);
        newValues.putAll(values);
        newValues.put(quantity, value);
        Set<Quantity> newEstimated = EnumSet.noneOf(Quantity.class);
        newEstimated.addAll(estimated);
        if (isEstimated) {
            newEstimated.add(quantity);
        } else {
            newEstimated.remove(quantity);
        }
        return new FiringCase(kind, newValues, newEstimated, flags, tiltAzimuthDeg, windFromDeg, towardsDeg);
    }

    /** With a fact stated. */
    public FiringCase with(Flag flag) {
        Set<Flag> newFlags = EnumSet.of(flag);
        newFlags.addAll(flags);
        return new FiringCase(kind, values, estimated, newFlags, tiltAzimuthDeg, windFromDeg, towardsDeg);
    }

    /** With the tube leaning {@code tiltDeg} from the vertical towards {@code azimuthDeg}. */
    public FiringCase tilted(double tiltDeg, double azimuthDeg) {
        FiringCase tilted = with(Quantity.TILT, tiltDeg);
        return new FiringCase(kind, tilted.values, tilted.estimated, flags,
                OptionalDouble.of(Require.finite(azimuthDeg, "azimuth of the tilt", "deg")), windFromDeg, towardsDeg);
    }

    /** In wind of {@code speedMps} from {@code fromDeg}. */
    public FiringCase inWind(double fromDeg, double speedMps) {
        FiringCase blown = with(Quantity.WIND, speedMps);
        return new FiringCase(kind, blown.values, blown.estimated, flags, tiltAzimuthDeg,
                OptionalDouble.of(Require.finite(fromDeg, "direction of the wind", "deg")), towardsDeg);
    }

    /** Seen from the direction {@code azimuthDeg}. */
    public FiringCase towards(double azimuthDeg) {
        return new FiringCase(kind, values, estimated, flags, tiltAzimuthDeg, windFromDeg, azimuthDeg);
    }

    /** The value known or assumed; empty if neither. */
    public Optional<Double> value(Quantity quantity) {
        Double value = values.get(quantity);
        return value == null ? quantity.assumed() : Optional.of(value);
    }

    /** Whether the direction to what is protected is {@code where}, with {@code sectorDeg} either side. */
    public boolean faces(Where where, double sectorDeg) {
        return switch (where) {
            case EVERYWHERE -> true;
            case TOWARDS_TILT -> leansNowhere() || within(tiltAzimuthDeg.getAsDouble(), sectorDeg);
            case AGAINST_TILT -> !leansNowhere() && within(tiltAzimuthDeg.getAsDouble() + 180, sectorDeg);
            case DOWNWIND -> windFromDeg.isEmpty() || within(windFromDeg.getAsDouble() + 180, sectorDeg);
            case UPWIND -> windFromDeg.isPresent() && within(windFromDeg.getAsDouble(), sectorDeg);
        };
    }

    private boolean leansNowhere() {
        return tiltAzimuthDeg.isEmpty() || value(Quantity.TILT).orElse(0.0) == 0;
    }

    private boolean within(double azimuthDeg, double sectorDeg) {
        return Math.abs(Math.IEEEremainder(towardsDeg - azimuthDeg, 360)) <= sectorDeg + 1e-9;
    }
}
