package org.girandole.plan.schedule;

import java.util.ArrayList;
import java.util.List;
import org.girandole.music.Meter;
import org.girandole.music.RampLaw;
import org.girandole.music.Rational;
import org.girandole.music.TempoEvent;
import org.girandole.music.TempoMap;
import org.girandole.physics.Figures;
import org.girandole.plan.Explanation.Step;
import org.girandole.plan.Times;

/** How the time of a bar and beat follows from the lines of a tempo block, one step for each line passed. */
final class TempoSteps {
    private static final String BLOCK = "tempo block";

    private final TempoMap map;
    private final int bar;
    private final Rational beat;
    private final List<Step> steps = new ArrayList<>();
    private int fromBar = 1;
    private Rational bpm;
    private Meter meter;

    private TempoSteps(TempoMap map, int bar, Rational beat) {
        this.map = map;
        this.bar = bar;
        this.beat = beat;
    }

    /** The steps to a bar and beat that exist in the map. */
    static List<Step> to(TempoMap map, int bar, Rational beat) {
        TempoSteps way = new TempoSteps(map, bar, beat);
        way.walk();
        return way.steps;
    }

    private void walk() {
        for (TempoEvent event : map.events()) {
            if (event instanceof TempoEvent.Start start) {
                bpm = start.bpm();
                meter = start.meter();
                steps.add(new Step("bar 1", "", "", Times.seconds(start.timeUs()) + " (" + bpm + " bpm, " + meter + ")", BLOCK));
            } else if (event instanceof TempoEvent.Step step) {
                if (step.bar() > bar) {
                    break;
                }
                constantTo(step.bar(), Rational.ONE);
                bpm = step.bpm() == null ? bpm : step.bpm();
                meter = step.meter() == null ? meter : step.meter();
            } else if (event instanceof TempoEvent.Ramp ramp) {
                if (ramp.fromBar() > bar) {
                    break;
                }
                constantTo(ramp.fromBar(), Rational.ONE);
                if (ramp.toBar() > bar) {
                    insideRamp(ramp);
                    return;
                }
                wholeRamp(ramp);
            }
        }
        constantTo(bar, beat);
    }

    private void constantTo(int toBar, Rational toBeat) {
        if (toBar == fromBar && toBeat.equals(Rational.ONE)) {
            return;
        }
        Rational beats = Rational.of((long) (toBar - fromBar) * meter.beatsPerBar()).plus(toBeat).minus(Rational.ONE);
        steps.add(new Step(place(toBar, toBeat), place(fromBar, Rational.ONE) + " + beats * 60 s / bpm",
                at(fromBar, Rational.ONE) + " + " + beats + " * 60 s / " + bpm, at(toBar, toBeat), BLOCK));
        fromBar = toBar;
    }

    private void wholeRamp(TempoEvent.Ramp ramp) {
        Rational beats = Rational.of((long) (ramp.toBar() - fromBar) * meter.beatsPerBar());
        boolean perBeat = ramp.law() == RampLaw.LINEAR_IN_BEATS;
        String start = place(fromBar, Rational.ONE);
        if (ramp.toBpm().equals(bpm)) {
            constantTo(ramp.toBar(), Rational.ONE);
        } else if (perBeat) {
            steps.add(new Step(place(ramp.toBar(), Rational.ONE), start + " + 60 s * beats / (bpm1 - bpm0) * ln(bpm1 / bpm0)",
                    at(fromBar, Rational.ONE) + " + 60 s * " + beats + " / (" + ramp.toBpm() + " - " + bpm + ") * ln(" + ramp.toBpm()
                            + " / " + bpm + ")",
                    at(ramp.toBar(), Rational.ONE), "tempo ramp, the same number of bpm each beat"));
        } else {
            steps.add(new Step(place(ramp.toBar(), Rational.ONE), start + " + 120 s * beats / (bpm0 + bpm1)",
                    at(fromBar, Rational.ONE) + " + 120 s * " + beats + " / (" + bpm + " + " + ramp.toBpm() + ")",
                    at(ramp.toBar(), Rational.ONE), "tempo ramp, the same number of bpm each second"));
        }
        fromBar = ramp.toBar();
        bpm = ramp.toBpm();
    }

    private void insideRamp(TempoEvent.Ramp ramp) {
        Rational whole = Rational.of((long) (ramp.toBar() - fromBar) * meter.beatsPerBar());
        Rational beats = Rational.of((long) (bar - fromBar) * meter.beatsPerBar()).plus(beat).minus(Rational.ONE);
        if (beats.signum() == 0) {
            return;
        }
        if (ramp.toBpm().equals(bpm)) {
            constantTo(bar, beat);
            return;
        }
        String start = place(fromBar, Rational.ONE);
        String numbersBefore = at(fromBar, Rational.ONE);
        if (ramp.law() == RampLaw.LINEAR_IN_BEATS) {
            steps.add(new Step("bpm there", "bpm0 + (bpm1 - bpm0) * beats / all beats",
                    bpm + " + (" + ramp.toBpm() + " - " + bpm + ") * " + beats + " / " + whole,
                    decimal(bpm.plus(ramp.toBpm().minus(bpm).times(beats).dividedBy(whole))) + " bpm", "tempo ramp"));
            steps.add(new Step(place(bar, beat), start + " + 60 s * all beats / (bpm1 - bpm0) * ln(bpm there / bpm0)",
                    numbersBefore + " + 60 s * " + whole + " / (" + ramp.toBpm() + " - " + bpm + ") * ln(bpm there / " + bpm + ")",
                    at(bar, beat), "tempo ramp, the same number of bpm each beat"));
        } else {
            steps.add(new Step("bpm there", "sqrt(bpm0^2 + (bpm1^2 - bpm0^2) * beats / all beats)",
                    "sqrt(" + bpm + "^2 + (" + ramp.toBpm() + "^2 - " + bpm + "^2) * " + beats + " / " + whole + ")",
                    decimal(map.bpmAt(map.timeUsOfBar(bar, beat))) + " bpm", "tempo ramp"));
            steps.add(new Step(place(bar, beat), start + " + 120 s * beats / (bpm0 + bpm there)",
                    numbersBefore + " + 120 s * " + beats + " / (" + bpm + " + bpm there)", at(bar, beat),
                    "tempo ramp, the same number of bpm each second"));
        }
    }

    private static String place(int bar, Rational beat) {
        return beat.equals(Rational.ONE) ? "bar " + bar : "bar " + bar + " beat " + beat;
    }

    private String at(int ofBar, Rational ofBeat) {
        return Times.seconds(map.timeUsOfBar(ofBar, ofBeat));
    }

    private static String decimal(Rational value) {
        return Figures.of(value.toDouble());
    }
}
