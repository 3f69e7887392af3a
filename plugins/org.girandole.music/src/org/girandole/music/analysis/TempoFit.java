package org.girandole.music.analysis;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.girandole.music.Meter;
import org.girandole.music.Rational;
import org.girandole.music.TempoMap;

/**
 * Draws a tempo map through beats: the fewest stretches of constant tempo and ramps, changing on bar lines, that stay close to
 * the beats. Each stretch costs a fixed price, each beat its squared distance; the cheapest division is found by dynamic
 * programming (segmented least squares, as in J. Kleinberg and É. Tardos, Algorithm Design, section 6.3).
 */
public final class TempoFit {
    private static final double SIGMA_US = 7_000;
    private static final double CONSTANT_PRICE = 14;
    private static final double RAMP_PRICE = 20;
    private static final int LONGEST_RAMP_BARS = 64;
    /** Nor does one line of a map reach farther than this: it keeps tracks of hours within seconds. */
    private static final int LONGEST_BARS = 400;
    /** A stretch that is this far from its beats is not going to be worth its price by growing. */
    private static final double HOPELESS = 40 * CONSTANT_PRICE;
    private static final int DECIMALS = 1000;

    private final double[] timeUs;
    private final int[] barAt;
    /** Sums of powers of the beat number and of their products with the time, up to each beat. */
    private final double[][] sums;

    private record Line(double cost, double a, double b, double c, boolean ramp) {
        double at(double x) {
            return a + b * x + c * x * x;
        }
    }

    private TempoFit(double[] timeUs, int[] barAt) {
        this.timeUs = timeUs;
        this.barAt = barAt;
        this.sums = new double[timeUs.length + 1][8];
        double base = timeUs[0];
        for (int i = 0; i < timeUs.length; i++) {
            double x = i;
            double y = timeUs[i] - base;
            double[] add = { 1, x, x * x, x * x * x, x * x * x * x, y, x * y, x * x * y };
            for (int k = 0; k < 7; k++) {
                sums[i + 1][k] = sums[i][k] + add[k];
            }
            sums[i + 1][7] = sums[i][7] + add[7];
        }
    }

    /**
     * The tempo map of beats; bar 1 begins on the first downbeat.
     *
     * @param beats       in order of time, with their places in the bar
     * @param beatsPerBar 0 where no bars are known
     * @return empty if fewer than three bar lines are among the beats
     */
    public static Optional<TempoMap> fit(List<Beat> beats, int beatsPerBar) {
        if (beatsPerBar == 0) {
            return Optional.empty();
        }
        int first = 0;
        while (first < beats.size() && !beats.get(first).isDownbeat()) {
            first++;
        }
        List<Integer> lines = new ArrayList<>();
        for (int i = first; i < beats.size(); i++) {
            if (beats.get(i).isDownbeat()) {
                lines.add(i - first);
            }
        }
        if (lines.size() < 3) {
            return Optional.empty();
        }
        int[] barAt = lines.stream().mapToInt(Integer::intValue).toArray();
        double[] times = new double[barAt[barAt.length - 1] + 1];
        for (int i = 0; i < times.length; i++) {
            times[i] = beats.get(first + i).timeUs();
        }
        return Optional.of(new TempoFit(times, barAt).map());
    }

    private TempoMap map() {
        int bars = barAt.length - 1;
        double[] best = new double[bars + 1];
        int[] from = new int[bars + 1];
        Line[] line = new Line[bars + 1];
        for (int end = 1; end <= bars; end++) {
            best[end] = Double.POSITIVE_INFINITY;
            // Backwards, as long as the bars have one length: another needs a line of its own.
            int farthest = Math.max(0, end - LONGEST_BARS);
            for (int start = end - 1; start >= farthest && length(start) == length(end - 1); start--) {
                Line constant = constant(barAt[start], barAt[end]);
                consider(best, from, line, start, end, constant);
                double least = constant.cost();
                if (end - start >= 2 && end - start <= LONGEST_RAMP_BARS) {
                    Line ramp = ramp(barAt[start], barAt[end]);
                    consider(best, from, line, start, end, ramp);
                    least = Math.min(least, ramp.cost());
                }
                if (least > HOPELESS) {
                    break;
                }
            }
        }
        List<Integer> knots = new ArrayList<>();
        for (int bar = bars; bar > 0; bar = from[bar]) {
            knots.add(0, bar);
        }
        knots.add(0, 0);
        return build(knots, line);
    }

    private int length(int bar) {
        return barAt[bar + 1] - barAt[bar];
    }

    private static void consider(double[] best, int[] from, Line[] line, int start, int end, Line candidate) {
        double cost = best[start] + candidate.cost() + (candidate.ramp() ? RAMP_PRICE : CONSTANT_PRICE);
        if (cost < best[end]) {
            best[end] = cost;
            from[end] = start;
            line[end] = candidate;
        }
    }

    private Line constant(int from, int to) {
        double[] s = sum(from, to);
        double det = s[0] * s[2] - s[1] * s[1];
        double b = (s[0] * s[6] - s[1] * s[5]) / det;
        double a = (s[5] - b * s[1]) / s[0];
        return new Line(cost(from, to, a, b, 0), a, b, 0, false);
    }

    private Line ramp(int from, int to) {
        // Powers about the middle of the stretch: the fourth powers of large beat numbers would drown the rest.
        double mid = (from + to) / 2.0;
        double[] s = shifted(sum(from, to), mid);
        double det = s[0] * s[4] - s[2] * s[2];
        double odd = s[2];
        double c = (s[0] * s[7] - s[2] * s[5]) / det;
        double a = (s[4] * s[5] - s[2] * s[7]) / det;
        double b = s[6] / odd;
        return new Line(cost(from, to, a - b * mid + c * mid * mid, b - 2 * c * mid, c), a - b * mid + c * mid * mid,
                b - 2 * c * mid, c, true);
    }

    private static double[] shifted(double[] s, double m) {
        return new double[] { s[0], s[1] - m * s[0], s[2] - 2 * m * s[1] + m * m * s[0], 0,
            s[4] - 4 * m * s[3] + 6 * m * m * s[2] - 4 * m * m * m * s[1] + m * m * m * m * s[0], s[5], s[6] - m * s[5],
            s[7] - 2 * m * s[6] + m * m * s[5] };
    }

    private double[] sum(int from, int to) {
        double[] s = new double[8];
        for (int k = 0; k < 8; k++) {
            s[k] = sums[to + 1][k] - sums[from][k];
        }
        return s;
    }

    /** Squared distances in units of sigma; beyond four sigma a beat is an error that no tempo should follow. */
    private double cost(int from, int to, double a, double b, double c) {
        double cost = 0;
        for (int i = from; i <= to; i++) {
            double away = (timeUs[i] - timeUs[0] - a - b * i - c * i * (double) i) / SIGMA_US;
            cost += Math.min(away * away, 16);
        }
        return cost;
    }

    private TempoMap build(List<Integer> knots, Line[] line) {
        double[] knotUs = new double[knots.size()];
        for (int k = 0; k < knotUs.length; k++) {
            int beat = barAt[knots.get(k)];
            double left = k > 0 ? line[knots.get(k)].at(beat) : Double.NaN;
            double right = k + 1 < knotUs.length ? line[knots.get(k + 1)].at(beat) : Double.NaN;
            knotUs[k] = timeUs[0] + (Double.isNaN(left) ? right : Double.isNaN(right) ? left : (left + right) / 2);
        }
        long startUs = Math.round(knotUs[0]);
        TempoMap.Builder builder = null;
        double writtenUs = startUs;
        for (int k = 0; k + 1 < knotUs.length; k++) {
            int bar = knots.get(k) + 1;
            int beats = barAt[knots.get(k + 1)] - barAt[knots.get(k)];
            Line l = line[knots.get(k + 1)];
            double fromSlope = l.b() + 2 * l.c() * barAt[knots.get(k)];
            double toSlope = l.b() + 2 * l.c() * barAt[knots.get(k + 1)];
            boolean ramp = l.ramp() && fromSlope > 0 && toSlope > 0 && Math.abs(fromSlope / toSlope - 1) > 0.005;
            // What earlier roundings of the tempo left over is made up for here.
            double lengthUs = knotUs[k + 1] - writtenUs;
            double meanSlope = lengthUs / beats;
            double scale = ramp ? meanSlope / rampMean(fromSlope, toSlope) : 1;
            Rational bpm = bpm(ramp ? fromSlope * scale : meanSlope);
            Meter meter = new Meter(length(knots.get(k)), 4);
            builder = builder == null ? TempoMap.startingAt(startUs, bpm, meter) : builder.tempo(bar, bpm, meter);
            if (ramp) {
                builder.ramp(bar, bpm(toSlope * scale), knots.get(k + 1) + 1);
            }
            writtenUs = builder.build().exactUsAtBeats(Rational.of(barAt[knots.get(k + 1)])).toDouble();
        }
        return builder.build();
    }

    /** Mean length of a beat in a ramp that is linear in beats between two lengths of a beat. */
    private static double rampMean(double fromUs, double toUs) {
        double v0 = 1 / fromUs;
        double v1 = 1 / toUs;
        return Math.log(v1 / v0) / (v1 - v0);
    }

    private static Rational bpm(double usPerBeat) {
        return Rational.of(Math.round(60e6 / usPerBeat * DECIMALS), DECIMALS);
    }
}
