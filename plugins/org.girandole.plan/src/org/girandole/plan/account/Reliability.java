package org.girandole.plan.account;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.function.Function;

/**
 * How often cues did what they should, over any number of shows. A cue counts as tried when current was sent: what was not fired, returned, or
 * not written down says nothing about lot or module.
 *
 * @param lots by lot and effect: failed are misfires and duds
 * @param modules by module, as the scripts name them: failed are misfires, which may as well be the igniter's fault or the wiring's
 */
public record Reliability(List<Rate> lots, List<Rate> modules) {
    /** The two-sided 95 % point of the normal distribution. */
    private static final double Z = 1.959964;

    public Reliability {
        lots = List.copyOf(lots);
        modules = List.copyOf(modules);
    }

    /** Cues tried and failed. */
    public record Rate(String what, int tried, int failed) {
        /** The share that failed, 0 to 1. */
        public double share() {
            return (double) failed / tried;
        }

        /**
         * The bounds between which the true share lies with 95 % confidence: the score interval of Wilson, which holds for few and for no failures too
         * (NIST/SEMATECH e-Handbook of Statistical Methods, 7.2.4.1).
         */
        public Bounds bounds() {
            double squared = Z * Z;
            double centre = share() + squared / (2 * tried);
            double half = Z * Math.sqrt(share() * (1 - share()) / tried + squared / (4.0 * tried * tried));
            double scale = 1 + squared / tried;
            return new Bounds(failed == 0 ? 0 : (centre - half) / scale, failed == tried ? 1 : (centre + half) / scale);
        }
    }

    /** A share lies between these, 0 to 1. */
    public record Bounds(double least, double most) {
    }

    /** Over these shows; what has the same name counts together. */
    public static Reliability of(List<Account> shows) {
        List<Account.Line> lines = shows.stream().flatMap(show -> show.lines().stream()).toList();
        return new Reliability(
                rates(lines, line -> line.cue().lot().map(lot -> lot + " of " + line.cue().effect().name()).orElse("no lot, " + line.cue().what()),
                        List.of(Outcome.MISFIRED, Outcome.DUD)),
                rates(lines, line -> line.cue().pin().map(pin -> pin.module()).orElse("no module"), List.of(Outcome.MISFIRED)));
    }

    private static List<Rate> rates(List<Account.Line> lines, Function<Account.Line, String> group, List<Outcome> failures) {
        Map<String, int[]> counts = new TreeMap<>();
        for (Account.Line line : lines) {
            line.outcome().filter(outcome -> outcome == Outcome.FIRED || outcome == Outcome.MISFIRED || outcome == Outcome.DUD).ifPresent(outcome -> {
                int[] count = counts.computeIfAbsent(group.apply(line), name -> new int[2]);
                count[0]++;
                count[1] += failures.contains(outcome) ? 1 : 0;
            });
        }
        List<Rate> rates = new ArrayList<>();
        counts.forEach((what, count) -> rates.add(new Rate(what, count[0], count[1])));
        return rates;
    }
}
