package org.girandole.lang.compile;

import static org.girandole.lang.show.ShowPackage.eINSTANCE;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.TreeSet;
import org.eclipse.emf.ecore.EObject;
import org.eclipse.emf.ecore.EStructuralFeature;
import org.girandole.lang.LanguageRules;
import org.girandole.lang.show.Quantity;
import org.girandole.music.Rational;
import org.girandole.plan.script.Measured;

/** Turns written quantities into SI values, and reports those that cannot be meant. */
final class Quantities {
    private static final BigDecimal MICROS = BigDecimal.valueOf(1_000_000);

    private final Problems problems;
    private final Sources sources;

    Quantities(Problems problems, Sources sources) {
        this.problems = problems;
        this.sources = sources;
    }

    /** The value in SI units, empty when it is not written or wrong; a wrong one is reported. */
    Optional<Double> si(Quantity written, Range range) {
        return exact(written, range, true).map(BigDecimal::doubleValue);
    }

    /** A time in microseconds, rounded half up. */
    Optional<Long> us(Quantity written, Range range) {
        return exact(written, range, true).map(Quantities::micros);
    }

    /** A time with its tolerance. */
    Optional<Measured> measured(Quantity written, Range range) {
        return exact(written, range, false).flatMap(value -> plusMinus(written, range, value)
                .map(tolerance -> new Measured(micros(value), micros(tolerance))));
    }

    /** The tolerance in SI units: zero when none is written, empty when it is wrong. */
    Optional<BigDecimal> plusMinus(Quantity written, Range range, BigDecimal value) {
        if (written.getTolerance() == null) {
            return Optional.of(BigDecimal.ZERO);
        }
        String unit = written.getToleranceUnit() != null ? written.getToleranceUnit() : written.getUnit();
        Optional<BigDecimal> number = number(written, eINSTANCE.getQuantity_Tolerance(), written.getTolerance());
        if (number.isEmpty()) {
            return Optional.empty();
        }
        if (Dimension.SHARE.has(unit)) {
            return Optional.of(value.abs().multiply(Dimension.SHARE.toSi(number.get(), unit)));
        }
        if (!checkUnit(written, unit, range, eINSTANCE.getQuantity_ToleranceUnit(), "the tolerance of ")) {
            return Optional.empty();
        }
        return Optional.of(range.dimension().toSi(number.get(), unit));
    }

    /** The exact SI value. @param alone whether a tolerance would be a mistake */
    Optional<BigDecimal> exact(Quantity written, Range range, boolean alone) {
        if (written == null || written.getNumber() == null) {
            return Optional.empty();
        }
        Optional<BigDecimal> number = number(written, eINSTANCE.getQuantity_Number(), written.getNumber());
        if (number.isEmpty() || !checkUnit(written, written.getUnit(), range, eINSTANCE.getQuantity_Unit(), "")) {
            return Optional.empty();
        }
        BigDecimal si = range.dimension().toSi(written.isNegative() ? number.get().negate() : number.get(), written.getUnit());
        if (!range.holds(si)) {
            problems.report(LanguageRules.NUMBER_RANGE, Sources.text(written) + " cannot be " + range.what())
                    .found(Sources.text(written), range.words()).remedy("check the digits and the unit").at(sources.whole(written));
            return Optional.empty();
        }
        if (alone && written.getTolerance() != null) {
            problems.report(LanguageRules.SYNTAX, "A tolerance has no meaning here")
                    .remedy("leave out the +- and what follows it").at(sources.of(written, eINSTANCE.getQuantity_Tolerance()));
        }
        return Optional.of(si);
    }

    private boolean checkUnit(Quantity written, String unit, Range range, EStructuralFeature place, String lead) {
        Dimension wanted = range.dimension();
        if (unit != null && wanted.has(unit)) {
            return true;
        }
        String text = Sources.text(written);
        String units = Words.or(wanted.symbols());
        if (unit == null) {
            if (DecimalComma.report(problems, sources, written) || LengthSigns.report(problems, sources, written, range)) {
                return false;
            }
            problems.report(LanguageRules.MISSING_UNIT, text + " has no unit; " + range.what() + " needs one")
                    .found(text, "a number and one of " + units).remedy("write its unit after it, such as " + text + " " + range.customaryUnit())
                    .data(Map.of("insert", range.customaryUnit())).at(sources.whole(written));
            return false;
        }
        for (Dimension other : Dimension.values()) {
            if (other.has(unit)) {
                problems.report(LanguageRules.WRONG_UNIT, unit + " measures " + other.words() + ", but " + lead + range.what() + " is "
                        + wanted.words()).found(text, "one of " + units).remedy("write it in " + units).at(sources.of(written, place));
                return false;
            }
        }
        if (List.of("beat", "beats", "bar", "bars", "frame", "frames").contains(unit)) {
            problems.report(LanguageRules.WRONG_UNIT, unit + " count music, and only in the score is there music to count; "
                    + range.what() + " is " + wanted.words()).found(text, "one of " + units).remedy("write it in " + units)
                    .at(sources.of(written, place));
            return false;
        }
        Optional<String> near = Words.nearest(unit, wanted.symbols()).or(() -> Words.nearest(unit, allSymbols()));
        problems.report(LanguageRules.UNKNOWN_UNIT, "'" + unit + "' is no unit" + near.map(n -> "; did you mean " + n + "?").orElse(""))
                .found(text, "one of " + units).remedy("write it in " + units).data(near.map(n -> Map.of("replace", n)).orElse(Map.of()))
                .at(sources.of(written, place));
        return false;
    }

    private static List<String> allSymbols() {
        TreeSet<String> all = new TreeSet<>();
        for (Dimension dimension : Dimension.values()) {
            all.addAll(dimension.symbols());
        }
        return new ArrayList<>(all);
    }

    /** A plain number, reported when it is too long to be one. */
    Optional<BigDecimal> number(EObject owner, EStructuralFeature feature, String text) {
        if (text == null) {
            return Optional.empty();
        }
        Optional<BigDecimal> number = Numbers.decimal(text);
        if (number.isEmpty()) {
            problems.report(LanguageRules.NUMBER_RANGE, Words.shown(text) + " is too large or too long for any number of a show")
                    .found(Words.shown(text), "at most 30 digits before and after the point").remedy("check the digits")
                    .at(sources.of(owner, feature));
        }
        return number;
    }

    /** A plain number between limits. */
    Optional<BigDecimal> number(EObject owner, EStructuralFeature feature, String text, String what, double least, double most) {
        Optional<BigDecimal> number = number(owner, feature, text);
        if (number.isPresent() && (number.get().doubleValue() < least || number.get().doubleValue() > most)) {
            outside(owner, feature, text, what, plain(least) + " to " + plain(most));
            return Optional.empty();
        }
        return number;
    }

    /** A whole number between limits. */
    OptionalInt whole(EObject owner, EStructuralFeature feature, String digits, String what, int least, int most) {
        if (digits == null) {
            return OptionalInt.empty();
        }
        OptionalInt number = Numbers.whole(digits);
        if (number.isEmpty() || number.getAsInt() < least || number.getAsInt() > most) {
            outside(owner, feature, digits, what, "a whole number from " + least + " to " + most);
            return OptionalInt.empty();
        }
        return number;
    }

    /** {@code 1/2}, {@code 3.5}; reported when it divides by zero or is too large. */
    Optional<Rational> rational(EObject owner, EStructuralFeature feature, String text, EStructuralFeature below, String divisor,
            String what, long most) {
        Optional<BigDecimal> number = number(owner, feature, text);
        if (number.isEmpty()) {
            return Optional.empty();
        }
        Rational value = Rational.of(number.get());
        if (divisor != null) {
            Optional<BigDecimal> part = number(owner, below, divisor);
            if (part.isEmpty()) {
                return Optional.empty();
            }
            if (part.get().signum() == 0) {
                outside(owner, below, divisor, "the lower number of a fraction", "anything but 0");
                return Optional.empty();
            }
            value = value.dividedBy(Rational.of(part.get()));
        }
        if (value.compareTo(Rational.of(most)) > 0) {
            outside(owner, feature, text, what, "0 to " + most);
            return Optional.empty();
        }
        return Optional.of(value);
    }

    void outside(EObject owner, EStructuralFeature feature, String text, String what, String allowed) {
        problems.report(LanguageRules.NUMBER_RANGE, Words.shown(text) + " cannot be " + what).found(Words.shown(text), allowed)
                .remedy("write " + allowed).at(sources.of(owner, feature));
    }

    private static String plain(double limit) {
        return limit == Math.rint(limit) ? Long.toString((long) limit) : Double.toString(limit);
    }

    static long micros(BigDecimal seconds) {
        return seconds.multiply(MICROS).setScale(0, RoundingMode.HALF_UP).longValueExact();
    }
}
