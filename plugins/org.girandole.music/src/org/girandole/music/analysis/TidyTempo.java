package org.girandole.music.analysis;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.girandole.music.Meter;
import org.girandole.music.MusicTimeException;
import org.girandole.music.Rational;
import org.girandole.music.TempoEvent;
import org.girandole.music.TempoMap;

/**
 * Makes a tempo map that was heard fit to be written down: as few lines and as round numbers as keep every bar line within some
 * milliseconds of where it was heard. 72.005 bpm is 72 bpm to a musician.
 */
public final class TidyTempo {
    private static final int MOST_LINES = 400;
    private static final double[] STEPS = { 1, 0.5, 0.1, 0.01, 0.001 };

    private final TempoMap heard;
    private final long withinUs;
    private final List<TempoEvent> lines = new ArrayList<>();

    private TidyTempo(TempoMap heard, long withinUs) {
        this.heard = heard;
        this.withinUs = withinUs;
    }

    /**
     * The tidy map.
     *
     * @param heard    a map, such as one of a {@link TrackAnalysis}
     * @param lastBar  the last bar whose line has to be met
     * @param withinUs how far a bar line may move; where a stretch cannot be rounded within it, it keeps the heard tempo
     * @return the heard map itself when it has more than 400 lines: it follows a player, or nothing, and no rounding makes it tidy
     */
    public static TempoMap of(TempoMap heard, int lastBar, long withinUs) {
        return heard.events().size() > MOST_LINES ? heard : new TidyTempo(heard, withinUs).tidy(lastBar);
    }

    private TempoMap tidy(int lastBar) {
        List<TempoEvent> events = heard.events();
        TempoEvent.Start start = (TempoEvent.Start) events.get(0);
        long startUs = (Math.floorDiv(start.timeUs() + 500, 1000)) * 1000;
        int end = endOf(events, 0, lastBar);
        lines.add(best(rounded(start.bpm()).stream().map(bpm -> (TempoEvent) new TempoEvent.Start(startUs, bpm, start.meter())).toList(), 1, end)
                .orElse(new TempoEvent.Start(startUs, start.bpm(), start.meter())));
        for (int i = 1; i < events.size(); i++) {
            if (events.get(i) instanceof TempoEvent.Step step) {
                step(step, endOf(events, i, lastBar));
            } else if (events.get(i) instanceof TempoEvent.Ramp ramp) {
                ramp(ramp);
            }
        }
        return TempoMap.of(lines);
    }

    /** The bar up to which a line holds. */
    private static int endOf(List<TempoEvent> events, int index, int lastBar) {
        for (TempoEvent next : events.subList(index + 1, events.size())) {
            if (next instanceof TempoEvent.Step step) {
                return step.bar();
            }
            if (next instanceof TempoEvent.Ramp ramp) {
                return ramp.fromBar();
            }
        }
        return lastBar;
    }

    private void step(TempoEvent.Step step, int end) {
        TempoMap soFar = TempoMap.of(lines);
        Meter meter = step.meter() == null ? heard.meterOfBar(step.bar()) : step.meter();
        boolean sameMeter = soFar.meterOfBar(step.bar()).equals(meter);
        Rational bpm = step.bpm() == null ? heard.bpmAt(heard.timeUsOfBar(step.bar(), Rational.ONE)) : step.bpm();
        Rational before = soFar.bpmAt(soFar.timeUsOfBar(step.bar(), Rational.ONE));
        boolean near = Math.abs(before.toDouble() / bpm.toDouble() - 1) < 0.01;
        if (sameMeter && near && within(soFar, step.bar(), end)) {
            return;
        }
        List<TempoEvent> candidates = new ArrayList<>();
        for (Rational candidate : rounded(bpm)) {
            candidates.add(new TempoEvent.Step(step.bar(), candidate, meter));
        }
        meeting(soFar, step.bar(), end).ifPresent(exact -> candidates.add(new TempoEvent.Step(step.bar(), exact, meter)));
        lines.add(best(candidates, step.bar(), end).orElse(new TempoEvent.Step(step.bar(), bpm, meter)));
    }

    private void ramp(TempoEvent.Ramp ramp) {
        List<TempoEvent> candidates = new ArrayList<>();
        for (Rational bpm : rounded(ramp.toBpm())) {
            candidates.add(new TempoEvent.Ramp(ramp.fromBar(), bpm, ramp.toBar(), ramp.law()));
        }
        lines.add(best(candidates, ramp.fromBar(), ramp.toBar()).orElse(ramp));
    }

    /** The tempo that brings the end of a stretch where it was heard, whatever earlier roundings left over. */
    private Optional<Rational> meeting(TempoMap soFar, int from, int to) {
        if (to <= from) {
            return Optional.empty();
        }
        double beats = heard.beatsOf(to, Rational.ONE).minus(heard.beatsOf(from, Rational.ONE)).toDouble();
        double us = heard.timeUsOfBar(to, Rational.ONE) - (double) soFar.timeUsOfBar(from, Rational.ONE);
        return us > 0 ? Optional.of(round(60e6 * beats / us, 0.001)) : Optional.empty();
    }

    /** The first line with which all bars keep their places. */
    private Optional<TempoEvent> best(List<TempoEvent> candidates, int from, int to) {
        for (TempoEvent candidate : candidates) {
            List<TempoEvent> tried = new ArrayList<>(lines);
            tried.add(candidate);
            try {
                if (within(TempoMap.of(tried), from, to)) {
                    return Optional.of(candidate);
                }
            } catch (MusicTimeException e) {
                // A tempo of zero, say: the next candidate is nearer to what was heard.
                continue;
            }
        }
        return Optional.empty();
    }

    private boolean within(TempoMap map, int from, int to) {
        for (int bar = from; bar <= to; bar++) {
            if (Math.abs(map.timeUsOfBar(bar, Rational.ONE) - heard.timeUsOfBar(bar, Rational.ONE)) > withinUs) {
                return false;
            }
        }
        return true;
    }

    private static List<Rational> rounded(Rational bpm) {
        List<Rational> candidates = new ArrayList<>();
        for (double step : STEPS) {
            candidates.add(round(bpm.toDouble(), step));
        }
        return candidates;
    }

    private static Rational round(double bpm, double step) {
        return Rational.of(BigDecimal.valueOf(Math.round(bpm / step)).multiply(BigDecimal.valueOf(step)).setScale(3, RoundingMode.HALF_UP));
    }
}
