package org.girandole.cli;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.girandole.music.Meter;
import org.girandole.music.RampLaw;
import org.girandole.music.Rational;
import org.girandole.music.TempoEvent;
import org.girandole.music.TempoMap;
import org.girandole.plan.Times;

/** A tempo map as lines of a script. */
final class TempoText {
    private TempoText() {
    }

    /** The whole block, its inner lines indented by two. */
    static List<String> lines(TempoMap map) {
        List<String> lines = new ArrayList<>();
        lines.add("tempo {");
        int lastBar = 1;
        Rational current = Rational.ONE;
        boolean ramped = false;
        for (TempoEvent event : map.events()) {
            if (event instanceof TempoEvent.Start start) {
                lines.add("  at " + Times.exactClock(start.timeUs()) + "  " + words(start.bpm(), start.meter()));
                current = start.bpm();
            } else if (event instanceof TempoEvent.Step step) {
                current = step.bpm() == null ? current : step.bpm();
                // A script cannot jump on the very bar where a ramp arrives; one bar later is the nearest it can say.
                int bar = ramped && step.bar() == lastBar ? step.bar() + 1 : step.bar();
                lines.add(bar(bar) + words(current, map.meterOfBar(step.bar())));
                lastBar = bar;
                ramped = false;
            } else if (event instanceof TempoEvent.Ramp ramp) {
                if (ramp.fromBar() != lastBar) {
                    lines.add(bar(ramp.fromBar()) + words(current, map.meterOfBar(ramp.fromBar())));
                }
                lines.add(bar(ramp.toBar()) + (ramp.law() == RampLaw.LINEAR_IN_TIME ? "ramp in time to " : "ramp to ") + ramp.toBpm() + " bpm");
                current = ramp.toBpm();
                lastBar = ramp.toBar();
                ramped = true;
            }
        }
        lines.add("}");
        return lines;
    }

    private static String bar(int bar) {
        return String.format(Locale.ROOT, "  %-11s  ", "bar " + bar);
    }

    private static String words(Rational bpm, Meter meter) {
        return bpm + " bpm " + meter;
    }
}
