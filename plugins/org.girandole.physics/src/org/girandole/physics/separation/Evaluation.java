package org.girandole.physics.separation;

import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.TreeSet;
import java.util.function.DoubleBinaryOperator;

import org.girandole.physics.Derivation;
import org.girandole.physics.Figures;

/** One run of a table on a firing. Used once. */
final class Evaluation {
    private final DistanceTable table;
    private final FiringCase firing;
    private final Derivation.Builder steps = Derivation.builder();
    private final Set<Quantity> used = EnumSet.noneOf(Quantity.class);
    private final Set<Quantity> given = EnumSet.noneOf(Quantity.class);
    private final Set<String> assumptions = new TreeSet<>();
    private final List<Applied> applied = new ArrayList<>();
    private double raisedByM;

    Evaluation(DistanceTable table, FiringCase firing) {
        this.table = table;
        this.firing = firing;
    }

    Requirement run() {
        try {
            BaseRule rule = baseRule();
            cite(rule.text(), rule.citation());
            List<Modifier> modifiers = table.modifiers().stream()
                    .filter(modifier -> modifier.appliesTo(rule) && holds(modifier.when()) && faces(modifier.where()))
                    .toList();
            raise(modifiers);
            double metres = compute(rule.formula(), rule.citation());
            OptionalDouble reducedShare = OptionalDouble.empty();
            for (Modifier modifier : modifiers) {
                metres = apply(modifier, metres);
                if (modifier.change() instanceof Change.MayReduceBy reduce) {
                    reducedShare = OptionalDouble.of(reducedShare.orElse(1) * (1 - reduce.share()));
                }
            }
            OptionalDouble reducible = reducedShare.isPresent() ? OptionalDouble.of(metres * reducedShare.getAsDouble())
                    : OptionalDouble.empty();
            return requirement(OptionalDouble.of(metres), Optional.empty(), reducible, Optional.of(steps.build()));
        } catch (NoNumberException none) {
            return requirement(OptionalDouble.empty(), Optional.of(none.getMessage()), OptionalDouble.empty(),
                    Optional.empty());
        }
    }

    private Requirement requirement(OptionalDouble metres, Optional<String> assessment, OptionalDouble reducible,
            Optional<Derivation> derivation) {
        Set<Quantity> estimated = EnumSet.noneOf(Quantity.class);
        estimated.addAll(used);
        estimated.retainAll(firing.estimated());
        if (applied.isEmpty()) {
            cite(table.title(), table.document());
        }
        return new Requirement(metres, assessment, reducible, applied, estimated, List.copyOf(assumptions), derivation);
    }

    private BaseRule baseRule() {
        for (BaseRule rule : table.rules()) {
            if (holds(rule.when())) {
                return rule;
            }
        }
        throw new NoNumberException(table.title() + " has no rule for this " + firing.kind().word()
                + firing.value(Quantity.CALIBRE).map(m -> " of " + Quantity.CALIBRE.show(m)).orElse(""));
    }

    private boolean holds(List<Condition> conditions) {
        for (Condition condition : conditions) {
            if (!holds(condition)) {
                return false;
            }
        }
        return true;
    }

    private boolean holds(Condition condition) {
        if (condition instanceof Condition.IsA isA) {
            return isA.kinds().contains(firing.kind());
        }
        if (condition instanceof Condition.Has has) {
            return firing.flags().contains(has.flag());
        }
        if (condition instanceof Condition.Facing facing) {
            return faces(facing.where());
        }
        Condition.In range = (Condition.In) condition;
        return range.holds(value(range.quantity()));
    }

    private boolean faces(Where where) {
        return firing.faces(where, table.sectorDeg());
    }

    private void cite(String text, Citation of) {
        applied.add(new Applied(text, of, true));
    }

    /** The value, noting that it was used, or no number at all if it is neither known nor to be assumed. */
    private double value(Quantity quantity) {
        used.add(quantity);
        if (!firing.values().containsKey(quantity) && quantity.assumed().isPresent()) {
            assumptions.add(quantity.word() + " not given, " + quantity.show(quantity.assumed().orElseThrow()) + " assumed");
        }
        return firing.value(quantity)
                .orElseThrow(() -> new NoNumberException("the " + quantity.word() + " of this " + firing.kind().word()
                        + " is not known"));
    }

    /** The value as an input of the computation: its step is written once. */
    private double input(Quantity quantity) {
        double value = value(quantity);
        if (given.add(quantity)) {
            steps.given(symbol(quantity), quantity.shown(value), quantity.unit(),
                    firing.estimated().contains(quantity) ? quantity.word() + ", estimated" : quantity.word());
        }
        return quantity == Quantity.HEIGHT ? value + raisedByM : value;
    }

    private static String symbol(Quantity quantity) {
        return quantity.name().toLowerCase(Locale.ROOT);
    }

    private void raise(List<Modifier> modifiers) {
        for (Modifier modifier : modifiers) {
            if (modifier.change() instanceof Change.AddToHeight add && value(add.quantity()) > 0) {
                double height = input(Quantity.HEIGHT);
                double more = input(add.quantity());
                raisedByM += more;
                cite(modifier.text(), modifier.citation());
                steps.step("height", "height + " + symbol(add.quantity()), Figures.of(height) + " + " + Figures.of(more),
                        height + more, "m", modifier.citation().text());
            }
        }
    }

    private double compute(Formula formula, Citation from) {
        if (formula instanceof Formula.Fixed fixed) {
            return step("d", "given by the table", "", fixed.metres(), from);
        }
        if (formula instanceof Formula.Times times) {
            Quantity quantity = times.quantity();
            double value = input(quantity);
            return step("d", times.words(), quantity.show(value), times.factor() * value, from);
        }
        if (formula instanceof Formula.Steps rows) {
            return row(rows, from);
        }
        if (formula instanceof Formula.Greatest greatest) {
            return combine("the greatest of", greatest.parts(), from, Math::max);
        }
        if (formula instanceof Formula.Sum sum) {
            return combine("the sum of", sum.parts(), from, Double::sum);
        }
        throw new NoNumberException(((Formula.NoNumber) formula).reason());
    }

    private double row(Formula.Steps rows, Citation from) {
        Quantity quantity = rows.quantity();
        double value = input(quantity);
        for (Formula.Row row : rows.rows()) {
            if (new Condition.In(quantity, Double.NEGATIVE_INFINITY, true, row.upTo(), true).holds(value)) {
                return step("d", "row up to " + quantity.show(row.upTo()), "", row.metres(), from);
            }
        }
        throw new NoNumberException("the " + quantity.word() + " of " + quantity.show(value) + " is beyond the table");
    }

    private double combine(String word, List<Formula> parts, Citation from, DoubleBinaryOperator by) {
        List<String> shown = new ArrayList<>();
        double result = compute(parts.get(0), from);
        shown.add(Figures.of(result) + " m");
        for (Formula part : parts.subList(1, parts.size())) {
            double value = compute(part, from);
            shown.add(Figures.of(value) + " m");
            result = by.applyAsDouble(result, value);
        }
        return step("d", word, String.join(", ", shown), result, from);
    }

    private double apply(Modifier modifier, double metres) {
        Change change = modifier.change();
        if (change instanceof Change.MultiplyBy times) {
            cite(modifier.text(), modifier.citation());
            return step("d", "d * " + Figures.of(times.factor()), Figures.of(metres) + " * " + Figures.of(times.factor()),
                    metres * times.factor(), modifier.citation());
        }
        if (change instanceof Change.IfBeyond beyond) {
            return ifBeyond(modifier, beyond, metres);
        }
        if (change instanceof Change.MayReduceBy) {
            applied.add(new Applied(modifier.text(), modifier.citation(), false));
            return metres;
        }
        if (change instanceof Change.NoNumber none) {
            cite(modifier.text(), modifier.citation());
            throw new NoNumberException(none.reason());
        }
        return metres;
    }

    /** An unknown range changes nothing: most articles have none stated, and the table asks for it only where it is known. */
    private double ifBeyond(Modifier modifier, Change.IfBeyond beyond, double metres) {
        if (!firing.values().containsKey(beyond.quantity()) || value(beyond.quantity()) <= metres) {
            return metres;
        }
        cite(modifier.text(), modifier.citation());
        double range = input(beyond.quantity());
        return step("d", Figures.of(beyond.factor()) + " " + symbol(beyond.quantity()),
                Figures.of(beyond.factor()) + " * " + Figures.of(range), beyond.factor() * range, modifier.citation());
    }

    private double step(String symbol, String formula, String substituted, double metres, Citation from) {
        steps.step(symbol, formula, substituted, metres, "m", from.text());
        return metres;
    }

    /** There is no number; the message says why. Never leaves this class. */
    private static final class NoNumberException extends RuntimeException {
        private static final long serialVersionUID = 1L;

        NoNumberException(String message) {
            super(message, null, false, false);
        }
    }
}
