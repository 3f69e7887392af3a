package org.girandole.lang.compile;

import static org.girandole.lang.show.ShowPackage.eINSTANCE;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.Set;
import org.girandole.lang.LanguageRules;
import org.girandole.lang.show.TempoField;
import org.girandole.lang.show.TempoLine;
import org.girandole.music.Meter;
import org.girandole.music.MusicTimeException;
import org.girandole.music.Rational;
import org.girandole.plan.script.TempoEntry;
import org.girandole.plan.script.TimeExpr;

/** The tempo of a soundtrack, line by line. */
final class TempoBlock {
    private static final long SLOWEST_BPM = 10;
    private static final long FASTEST_BPM = 1000;
    private static final int MOST_BARS = 100_000;

    private final Compilation compilation;
    private final Times times;

    TempoBlock(Compilation compilation, Times times) {
        this.compilation = compilation;
        this.times = times;
    }

    List<TempoEntry> tempo(TempoField field) {
        List<TempoEntry> entries = new ArrayList<>();
        int lastBar = 1;
        for (TempoLine line : field.getEntries()) {
            boolean first = entries.isEmpty() && line == field.getEntries().get(0);
            Optional<Rational> bpm = bpm(line);
            Optional<Long> at = Optional.empty();
            Optional<Integer> bar = Optional.empty();
            if (line.getAt() != null) {
                at = startOfMusic(line, first);
            } else {
                OptionalInt number = compilation.quantities().whole(line, eINSTANCE.getTempoLine_Bar(), line.getBar(), "a bar", 1, MOST_BARS);
                bar = number.isPresent() && inOrder(line, first, number.getAsInt(), lastBar) ? Optional.of(number.getAsInt())
                        : Optional.empty();
                lastBar = bar.orElse(lastBar);
            }
            if (bpm.isPresent() && (at.isPresent() || bar.isPresent())) {
                Optional<TempoEntry.Ramp> ramp = !line.isRamp() || first ? Optional.empty()
                        : Optional.of(line.isInTime() ? TempoEntry.Ramp.PER_SECOND : TempoEntry.Ramp.PER_BEAT);
                entries.add(new TempoEntry(at, bar, bpm.get(), meter(line), ramp, compilation.sources().whole(line)));
            } else if (first) {
                return List.of();
            }
        }
        return entries;
    }

    private boolean inOrder(TempoLine line, boolean first, int bar, int lastBar) {
        if (first) {
            compilation.problems().report(LanguageRules.BAD_TIME, "The first line of a tempo must say when bar 1 begins")
                    .found("bar " + bar, "a time, such as at 0:02.000").remedy("write at 0:02.000 instead of bar " + bar)
                    .at(compilation.sources().of(line, eINSTANCE.getTempoLine_Bar()));
            return false;
        }
        if (bar <= lastBar) {
            compilation.quantities().outside(line, eINSTANCE.getTempoLine_Bar(), line.getBar(),
                    "the bar of a tempo change after bar " + lastBar, (lastBar + 1) + " or more");
            return false;
        }
        return true;
    }

    private Optional<Long> startOfMusic(TempoLine line, boolean first) {
        if (!first) {
            compilation.problems().report(LanguageRules.BAD_TIME, "Only the first line of a tempo has a time; later ones change at a bar")
                    .found("at " + Sources.text(line.getAt()), "bar and its number").remedy("write bar 33, say")
                    .at(compilation.sources().whole(line.getAt()));
            return Optional.empty();
        }
        Optional<TimeExpr> at = times.time(line.getAt(), new Times.Place(Map.of(), Set.of(), false));
        if (at.isEmpty()) {
            return Optional.empty();
        }
        Rational us = Rational.ZERO;
        boolean plain = at.get().anchor() instanceof TimeExpr.AtClock || at.get().anchor() instanceof TimeExpr.Origin;
        if (at.get().anchor() instanceof TimeExpr.AtClock clock) {
            us = Rational.of(clock.us());
        }
        for (TimeExpr.Step step : at.get().steps()) {
            plain &= step.unit() == TimeExpr.StepUnit.MICROSECOND;
            us = us.plus(step.amount());
        }
        if (!plain) {
            compilation.problems().report(LanguageRules.BAD_TIME, "The beginning of bar 1 cannot be counted in bars, beats, frames or marks")
                    .found(Sources.text(line.getAt()), "a time, such as 0:02.000").remedy("write the time at which bar 1 begins")
                    .at(compilation.sources().whole(line.getAt()));
            return Optional.empty();
        }
        return Optional.of(us.roundHalfUp());
    }

    private Optional<Rational> bpm(TempoLine line) {
        if (line.getBpm() == null) {
            return Optional.empty();
        }
        Optional<Rational> bpm = compilation.quantities().rational(line, eINSTANCE.getTempoLine_Bpm(), line.getBpm(),
                eINSTANCE.getTempoLine_Divisor(), line.getDivisor(), "a tempo", FASTEST_BPM);
        if (bpm.isPresent() && bpm.get().compareTo(Rational.of(SLOWEST_BPM)) < 0) {
            compilation.quantities().outside(line, eINSTANCE.getTempoLine_Bpm(), line.getBpm(), "a tempo",
                    SLOWEST_BPM + " to " + FASTEST_BPM + " bpm");
            return Optional.empty();
        }
        if (line.getUnit() == null || !Dimension.TEMPO.has(line.getUnit())) {
            boolean missing = line.getUnit() == null;
            compilation.problems().report(missing ? LanguageRules.MISSING_UNIT : LanguageRules.WRONG_UNIT,
                    "A tempo is in bpm, beats a minute" + (missing ? "" : ", not in " + line.getUnit()))
                    .found(missing ? line.getBpm() : line.getUnit(), "bpm").remedy("write " + line.getBpm() + " bpm")
                    .at(compilation.sources().of(line, missing ? eINSTANCE.getTempoLine_Bpm() : eINSTANCE.getTempoLine_Unit()));
            return Optional.empty();
        }
        return bpm;
    }

    private Optional<Meter> meter(TempoLine line) {
        if (line.getBeats() == null || line.getBeatUnit() == null) {
            return Optional.empty();
        }
        OptionalInt beats = Numbers.whole(line.getBeats());
        OptionalInt unit = Numbers.whole(line.getBeatUnit());
        try {
            return Optional.of(new Meter(beats.orElse(0), unit.orElse(0)));
        } catch (MusicTimeException e) {
            compilation.problems().report(LanguageRules.NUMBER_RANGE, e.getMessage()).found(line.getBeats() + "/" + line.getBeatUnit(),
                    "such as 4/4, 3/4 or 6/8").remedy("write the meter as beats in a bar, a slash, and the note that is one beat")
                    .at(compilation.sources().of(line, eINSTANCE.getTempoLine_Beats()));
            return Optional.empty();
        }
    }
}
