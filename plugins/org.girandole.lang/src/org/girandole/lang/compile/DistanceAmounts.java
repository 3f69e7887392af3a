package org.girandole.lang.compile;

import static org.girandole.lang.show.ShowPackage.eINSTANCE;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.girandole.lang.LanguageRules;
import org.girandole.lang.show.AddChange;
import org.girandole.lang.show.AllowChange;
import org.girandole.lang.show.Amount;
import org.girandole.lang.show.AmountRow;
import org.girandole.lang.show.AssessChange;
import org.girandole.lang.show.FartherChange;
import org.girandole.lang.show.MetresAmount;
import org.girandole.lang.show.PlainAmount;
import org.girandole.lang.show.RowsAmount;
import org.girandole.lang.show.ThenChange;
import org.girandole.lang.show.TimesChange;
import org.girandole.music.Rational;
import org.girandole.physics.separation.Change;
import org.girandole.physics.separation.Formula;
import org.girandole.physics.separation.Quantity;

/** The distances of a table, and how they change. Everything is empty when it is wrong, which is reported. */
final class DistanceAmounts {
    private static final int MOST_TIMES = 100;
    private static final List<String> LENGTHS = List.of("height", "calibre", "debris", "structure");
    private static final List<String> ROWS = List.of("calibre", "height", "debris", "structure", "slope", "tilt", "wind");

    private final Compilation compilation;
    private final DistanceWords words;

    DistanceAmounts(Compilation compilation) {
        this.compilation = compilation;
        this.words = new DistanceWords(compilation);
    }

    Optional<Formula> formula(Amount amount) {
        if (amount == null) {
            return Optional.empty();
        }
        List<Formula> parts = new ArrayList<>();
        for (PlainAmount part : amount.getParts()) {
            plain(part).ifPresent(parts::add);
        }
        if (parts.isEmpty() || parts.size() < amount.getParts().size()) {
            return Optional.empty();
        }
        if (amount.getJoint() == null) {
            return Optional.of(parts.get(0));
        }
        return Optional.of(amount.getJoint().equals("sum") ? new Formula.Sum(parts) : new Formula.Greatest(parts));
    }

    private Optional<Formula> plain(PlainAmount amount) {
        if (amount instanceof RowsAmount rows) {
            return words.quantity(rows, eINSTANCE.getPlainAmount_Word(), rows.getWord(), ROWS).flatMap(quantity -> rows(rows, quantity));
        }
        if (!(amount instanceof MetresAmount metres)) {
            return Optional.empty();
        }
        if (metres.getWord() != null) {
            Optional<Quantity> quantity = words.quantity(metres, eINSTANCE.getPlainAmount_Word(), metres.getWord(), LENGTHS);
            Optional<Double> share = compilation.quantities().si(metres.getMetres(), Range.SHARE);
            return quantity.isEmpty() ? Optional.empty() : share.map(of -> Formula.times(of, quantity.get(), Sources.text(metres)));
        }
        Optional<Double> distance = compilation.quantities().si(metres.getMetres(), metres.getUnit() == null ? Range.DISTANCE : Range.HEIGHT);
        return metres.getUnit() == null ? distance.map(Formula::fixed) : distance.flatMap(each -> perUnit(metres, each));
    }

    private Optional<Formula> perUnit(MetresAmount amount, double metres) {
        if (!Dimension.LENGTH.has(amount.getUnit())) {
            compilation.problems().report(LanguageRules.WRONG_UNIT, "A distance is so much per mm or in of calibre, not per " + amount.getUnit())
                    .found(amount.getUnit(), Words.or(Dimension.LENGTH.symbols())).remedy("write such as 0.8 m per mm, or 70 ft per in")
                    .at(compilation.sources().of(amount, eINSTANCE.getMetresAmount_Unit()));
            return Optional.empty();
        }
        double unitM = Dimension.LENGTH.toSi(BigDecimal.ONE, amount.getUnit()).doubleValue();
        return Optional.of(Formula.times(metres / unitM, Quantity.CALIBRE, Sources.text(amount) + " * calibre"));
    }

    private Optional<Formula> rows(RowsAmount written, Quantity quantity) {
        List<Formula.Row> rows = new ArrayList<>();
        for (AmountRow row : written.getRows()) {
            Optional<Double> upTo = words.value(row.getUpTo(), quantity);
            Optional<Double> metres = compilation.quantities().si(row.getMetres(), Range.DISTANCE);
            if (upTo.isEmpty() || metres.isEmpty()) {
                return Optional.empty();
            }
            if (!rows.isEmpty() && upTo.get() <= rows.get(rows.size() - 1).upTo()) {
                compilation.problems().report(LanguageRules.NUMBER_RANGE, "This row is never reached: the row before it goes as far")
                        .found(Sources.text(row.getUpTo()), "rows in rising order").remedy("put the rows in order, the smallest first")
                        .at(compilation.sources().whole(row));
                return Optional.empty();
            }
            rows.add(new Formula.Row(upTo.get(), metres.get()));
        }
        return rows.isEmpty() ? Optional.empty() : Optional.of(new Formula.Steps(quantity, rows));
    }

    Optional<Change> change(ThenChange written) {
        if (written instanceof AddChange add) {
            return add.getWord() == null ? compilation.quantities().si(add.getShare(), Range.MORE).map(more -> new Change.MultiplyBy(1 + more))
                    : words.quantity(add, eINSTANCE.getAddChange_Word(), add.getWord(), List.of("structure")).map(Change.AddToHeight::new);
        }
        if (written instanceof TimesChange times) {
            return factor(times).map(Change.MultiplyBy::new);
        }
        if (written instanceof AllowChange allow) {
            return compilation.quantities().si(allow.getShare(), Range.OFF).map(Change.MayReduceBy::new);
        }
        if (written instanceof AssessChange assess) {
            return Optional.ofNullable(assess.getReason()).map(Change.NoNumber::new);
        }
        if (written instanceof FartherChange farther) {
            Optional<Quantity> quantity = words.quantity(farther, eINSTANCE.getFartherChange_Word(), farther.getWord(), LENGTHS);
            Optional<Double> share = compilation.quantities().si(farther.getShare(), Range.SHARE);
            return quantity.isEmpty() ? Optional.empty() : share.map(of -> new Change.IfBeyond(quantity.get(), of));
        }
        return Optional.empty();
    }

    private Optional<Double> factor(TimesChange times) {
        Optional<Double> factor = compilation.quantities().rational(times, eINSTANCE.getTimesChange_Factor(), times.getFactor(),
                eINSTANCE.getTimesChange_Divisor(), times.getDivisor(), "a multiple of a distance", MOST_TIMES).map(Rational::toDouble);
        if (factor.isPresent() && factor.get() <= 0) {
            compilation.quantities().outside(times, eINSTANCE.getTimesChange_Factor(), times.getFactor(), "a multiple of a distance",
                    "more than 0, up to " + MOST_TIMES);
            return Optional.empty();
        }
        return factor;
    }
}
