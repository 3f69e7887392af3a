package org.girandole.lang.compile;

import static org.girandole.lang.show.ShowPackage.eINSTANCE;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.Set;
import org.eclipse.emf.ecore.EObject;
import org.eclipse.emf.ecore.EStructuralFeature;
import org.girandole.lang.LanguageRules;
import org.girandole.lang.show.Anchor;
import org.girandole.lang.show.BarAnchor;
import org.girandole.lang.show.ClockAnchor;
import org.girandole.lang.show.CountedStep;
import org.girandole.lang.show.NameAnchor;
import org.girandole.lang.show.Named;
import org.girandole.lang.show.NamedStep;
import org.girandole.lang.show.OffsetAnchor;
import org.girandole.lang.show.Parameter;
import org.girandole.lang.show.SignedStep;
import org.girandole.lang.show.Step;
import org.girandole.music.Rational;
import org.girandole.plan.script.Duration;
import org.girandole.plan.script.TimeExpr;

/** Times as written, with names and units settled; how late they are in the music is not decided here. */
final class Times {
    private static final int MOST_BARS = 100_000;
    private static final long MOST_COUNTED = 1_000_000;
    private static final Rational MICROS = Rational.of(1_000_000);

    private final Compilation compilation;
    private final Clocks clocks;

    /**
     * What a time may use where it stands.
     *
     * @param values what the values of the figure around mean
     * @param marks marks that are not in the script but in label files
     * @param relative whether it counts from the start of a repetition or figure, so that no fixed moment makes sense
     */
    record Place(Map<Parameter, Given> values, Set<String> marks, boolean relative) {
        Place inside() {
            return new Place(values, marks, true);
        }
    }

    Times(Compilation compilation) {
        this.compilation = compilation;
        this.clocks = new Clocks(compilation);
    }

    Clocks clocks() {
        return clocks;
    }

    Optional<TimeExpr> time(org.girandole.lang.show.TimeExpr written, Place place) {
        if (written == null || written.getAnchor() == null) {
            return Optional.empty();
        }
        Anchor anchor = written.getAnchor();
        List<TimeExpr.Step> steps = new ArrayList<>();
        Optional<TimeExpr.Anchor> start = anchor(anchor, place, steps);
        boolean whole = signed(written.getSteps(), place, steps);
        if (start.isEmpty() || !whole) {
            return Optional.empty();
        }
        if (place.relative() && !(start.get() instanceof TimeExpr.Origin)) {
            compilation.problems().report(LanguageRules.ABSOLUTE_TIME, "Inside a figure or a repetition times count from its start, but "
                    + Sources.text(anchor) + " is a fixed moment").found(Sources.text(anchor), "0, or a length of time such as 1 beat")
                    .remedy("write how long after the start it is, such as 0 or 1 beat").at(compilation.sources().whole(anchor));
            return Optional.empty();
        }
        return Optional.of(new TimeExpr(start.get(), steps, compilation.sources().whole(written)));
    }

    Optional<Duration> duration(org.girandole.lang.show.Duration written, Place place) {
        if (written == null || written.getFirst() == null) {
            return Optional.empty();
        }
        List<TimeExpr.Step> steps = new ArrayList<>();
        boolean whole = step(written.getFirst(), place, false, steps);
        whole &= signed(written.getSteps(), place, steps);
        if (!whole) {
            return Optional.empty();
        }
        if (steps.stream().noneMatch(step -> step.amount().signum() > 0)) {
            compilation.problems().report(LanguageRules.NUMBER_RANGE, "Something that comes every " + Sources.text(written)
                    + " never moves on").found(Sources.text(written), "more than 0").remedy("write how far apart they are, such as 1/2 beat")
                    .at(compilation.sources().whole(written));
            return Optional.empty();
        }
        return Optional.of(new Duration(steps, compilation.sources().whole(written)));
    }

    /** The anchor; steps that belong to it, such as {@code 1 beat}, are added. */
    private Optional<TimeExpr.Anchor> anchor(Anchor anchor, Place place, List<TimeExpr.Step> steps) {
        if (anchor instanceof BarAnchor bar) {
            return bar(bar);
        }
        if (anchor instanceof ClockAnchor clock) {
            return clocks.soundtrackTime(clock, eINSTANCE.getClockAnchor_Clock(), clock.getClock()).map(TimeExpr.AtClock::new);
        }
        if (anchor instanceof OffsetAnchor offset) {
            boolean counted = counted(offset, eINSTANCE.getOffsetAnchor_Number(), offset.getNumber(), eINSTANCE.getOffsetAnchor_Divisor(),
                    offset.getDivisor(), offset.getUnit(), offset.isNegative(), steps);
            return counted ? Optional.of(new TimeExpr.Origin()) : Optional.empty();
        }
        return named((NameAnchor) anchor, place, steps);
    }

    private Optional<TimeExpr.Anchor> named(NameAnchor anchor, Place place, List<TimeExpr.Step> steps) {
        Named target = anchor.getTarget();
        if (target != null && target.eIsProxy()) {
            // Marks of label files are not in the script, so linking cannot know them.
            String name = Sources.name(anchor, eINSTANCE.getNameAnchor_Target());
            if (place.marks().contains(name)) {
                return Optional.of(new TimeExpr.AtMark(name));
            }
            compilation.unresolved(anchor, eINSTANCE.getNameAnchor_Target(), place.marks());
            return Optional.empty();
        }
        Optional<Named> resolved = compilation.resolve(anchor, eINSTANCE.getNameAnchor_Target());
        if (resolved.isPresent() && resolved.get() instanceof Parameter parameter) {
            Given given = place.values().get(parameter);
            if (given == null) {
                return Optional.empty();
            }
            Optional<TimeExpr> span = given.asSpan(compilation, parameter);
            span.ifPresent(time -> steps.addAll(time.steps()));
            return span.map(TimeExpr::anchor);
        }
        return resolved.map(mark -> new TimeExpr.AtMark(mark.getName()));
    }

    private Optional<TimeExpr.Anchor> bar(BarAnchor bar) {
        OptionalInt number = compilation.quantities().whole(bar, eINSTANCE.getBarAnchor_Bar(), bar.getBar(), "a bar", 1, MOST_BARS);
        Optional<Rational> beat = Optional.of(Rational.ONE);
        if (bar.getBeat() != null) {
            beat = compilation.quantities().rational(bar, eINSTANCE.getBarAnchor_Beat(), bar.getBeat(), eINSTANCE.getBarAnchor_Divisor(),
                    bar.getDivisor(), "a beat of a bar", MOST_COUNTED);
            if (beat.isPresent() && beat.get().compareTo(Rational.ONE) < 0) {
                compilation.quantities().outside(bar, eINSTANCE.getBarAnchor_Beat(), bar.getBeat(), "a beat of a bar",
                        "1 or more; beats count from 1");
                return Optional.empty();
            }
        }
        return number.isEmpty() || beat.isEmpty() ? Optional.empty() : Optional.of(new TimeExpr.AtBar(number.getAsInt(), beat.get()));
    }

    private boolean signed(List<SignedStep> written, Place place, List<TimeExpr.Step> steps) {
        boolean whole = true;
        for (SignedStep step : written) {
            whole &= step.getStep() != null && step(step.getStep(), place, "-".equals(step.getSign()), steps);
        }
        return whole;
    }

    private boolean step(Step step, Place place, boolean back, List<TimeExpr.Step> steps) {
        if (step instanceof CountedStep counted) {
            return counted(counted, eINSTANCE.getCountedStep_Number(), counted.getNumber(), eINSTANCE.getCountedStep_Divisor(),
                    counted.getDivisor(), counted.getUnit(), back, steps);
        }
        Optional<Parameter> parameter = compilation.resolve(step, eINSTANCE.getNamedStep_Target(), Parameter.class);
        Given given = parameter.map(place.values()::get).orElse(null);
        if (given == null) {
            return false;
        }
        Optional<TimeExpr> span = given.asSpan(compilation, parameter.get());
        span.ifPresent(time -> time.steps().forEach(part -> steps.add(back ? new TimeExpr.Step(part.amount().negate(), part.unit()) : part)));
        return span.isPresent();
    }

    /** Adds {@code number / divisor unit}; zero may go without a unit and adds nothing. */
    private boolean counted(EObject owner, EStructuralFeature feature, String number, EStructuralFeature below, String divisor, String unit,
            boolean back, List<TimeExpr.Step> steps) {
        Optional<Rational> amount = compilation.quantities().rational(owner, feature, number, below, divisor, "a count of time",
                MOST_COUNTED);
        if (amount.isEmpty()) {
            return false;
        }
        if (amount.get().signum() == 0) {
            return true;
        }
        if (unit == null) {
            if (DecimalComma.report(compilation.problems(), compilation.sources(), owner)) {
                return false;
            }
            compilation.problems().report(LanguageRules.MISSING_UNIT, Sources.text(owner) + " has no unit; a time needs one")
                    .found(Sources.text(owner), "a number and one of beats, bars, s, ms, min, frames")
                    .remedy("write its unit after it, such as " + Sources.text(owner) + " s or " + Sources.text(owner) + " beats")
                    .data(Map.of("insert", "s", "others", "beats bars ms")).at(compilation.sources().of(owner, feature));
            return false;
        }
        Rational signed = back ? amount.get().negate() : amount.get();
        steps.add(switch (unit) {
            case "beat", "beats" -> new TimeExpr.Step(signed, TimeExpr.StepUnit.BEAT);
            case "bar", "bars" -> new TimeExpr.Step(signed, TimeExpr.StepUnit.BAR);
            case "frame", "frames" -> new TimeExpr.Step(signed, TimeExpr.StepUnit.FRAME);
            case "ms" -> new TimeExpr.Step(signed.times(1000), TimeExpr.StepUnit.MICROSECOND);
            case "min" -> new TimeExpr.Step(signed.times(60).times(MICROS), TimeExpr.StepUnit.MICROSECOND);
            default -> new TimeExpr.Step(signed.times(MICROS), TimeExpr.StepUnit.MICROSECOND);
        });
        return true;
    }
}
