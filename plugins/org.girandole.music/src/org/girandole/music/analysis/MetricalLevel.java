package org.girandole.music.analysis;

import java.util.Arrays;

/**
 * Decides on which level of the metre the beat lies, once a pulse has been found: a pulse of quavers in slow music becomes the
 * beat of every other one; a pulse that fell between the beats is moved onto them.
 *
 * <p>Two rules of thumb of our own, with constants chosen on generated pieces other than those it is measured on. Beats carry
 * what makes the bar: the strokes that differ and the changes of harmony, more than the places half-way between them. And
 * music usually has something between its beats: a quick pulse with nothing between its strokes, whose every other stroke is
 * the weaker, is the level below the beat.
 */
final class MetricalLevel {
    /** A pulse slower than this is not halved; the half of it would be slower than music walks. */
    private static final double QUICK_FRAMES = 52;
    private static final double WEAKER_EVERY_OTHER = 1.5;
    private static final double HARMONY_EVERY_OTHER = 1;
    private static final double NOTHING_BETWEEN = 0.12;
    private static final double HARMONY_WEIGHT = 2;
    private static final double CONTRAST_WEIGHT = 5;
    private static final int FEWEST = 8;

    private final Accents accents;
    private final float[] observed;

    private MetricalLevel(Accents accents, float[] observed) {
        this.accents = accents;
        this.observed = observed;
    }

    /** @return frames of the beats of a track */
    static double[] beats(float[] observed, Accents accents) {
        MetricalLevel level = new MetricalLevel(accents, observed);
        double[] pulse = asDoubles(BeatTracker.track(observed));
        if (pulse.length < FEWEST) {
            return pulse;
        }
        double[] beats = asDoubles(BeatTracker.trackNear(observed, usualPeriod(level.halved(pulse))));
        return beats.length < FEWEST ? beats : level.movedOntoBeats(beats);
    }

    private static double[] asDoubles(int[] frames) {
        return Arrays.stream(frames).asDoubleStream().toArray();
    }

    /** The median: half of the track goes no faster. */
    private static double usualPeriod(double[] beats) {
        double[] periods = new double[beats.length - 1];
        Arrays.setAll(periods, i -> beats[i + 1] - beats[i]);
        Arrays.sort(periods);
        return periods[periods.length / 2];
    }

    private double[] halved(double[] beats) {
        double period = (beats[beats.length - 1] - beats[0]) / (beats.length - 1);
        double between = strength(between(beats)) / Math.max(1e-6, strength(beats));
        if (period > QUICK_FRAMES || between > NOTHING_BETWEEN) {
            return beats;
        }
        double[] even = everyOther(beats, 0);
        double[] odd = everyOther(beats, 1);
        double[] ratio = ratios(even, odd);
        double strokes = ratio[0] + ratio[1] + ratio[2];
        double harmony = ratio[Accents.HARMONY];
        if (strokes > WEAKER_EVERY_OTHER && harmony > HARMONY_EVERY_OTHER) {
            return even;
        }
        return strokes < -WEAKER_EVERY_OTHER && harmony < -HARMONY_EVERY_OTHER ? odd : beats;
    }

    private double[] movedOntoBeats(double[] beats) {
        double[] between = between(beats);
        double[] ratio = ratios(beats, between);
        double votes = ratio[0] + ratio[1] + ratio[2] + HARMONY_WEIGHT * ratio[Accents.HARMONY]
                + CONTRAST_WEIGHT * (contrast(beats) - contrast(between));
        return votes < 0 ? between : beats;
    }

    private double strength(double[] places) {
        double sum = 0;
        for (double place : places) {
            int n = (int) Math.round(place);
            sum += n < observed.length ? Math.max(0, observed[n]) : 0;
        }
        return sum / places.length;
    }

    private static double[] between(double[] beats) {
        double[] between = new double[beats.length - 1];
        Arrays.setAll(between, i -> (beats[i] + beats[i + 1]) / 2);
        return between;
    }

    private static double[] everyOther(double[] beats, int first) {
        double[] some = new double[(beats.length - first + 1) / 2];
        Arrays.setAll(some, i -> beats[2 * i + first]);
        return some;
    }

    /** How much stronger each kind of accent is in the one than in the other, in octaves. */
    private double[] ratios(double[] one, double[] other) {
        double[] a = means(one);
        double[] b = means(other);
        double[] ratios = new double[Accents.KINDS];
        Arrays.setAll(ratios, k -> Math.log((a[k] + 1e-3) / (b[k] + 1e-3)) / Math.log(2));
        return ratios;
    }

    private double[] means(double[] places) {
        double[] mean = new double[Accents.KINDS];
        for (double place : places) {
            double[] accent = accents.at(place);
            for (int k = 0; k < mean.length; k++) {
                mean[k] += accent[k] / places.length;
            }
        }
        return mean;
    }

    /**
     * How differently the places of a bar are accented: the variance between the means of each place, less what chance would
     * give, in units of the squared mean, for the bar length that shows it best.
     */
    private double contrast(double[] places) {
        double[][] values = new double[places.length][];
        Arrays.setAll(values, i -> accents.at(places[i]));
        double best = 0;
        for (int bar = 2; bar <= Math.min(7, places.length / 3); bar++) {
            double sum = 0;
            for (int kind = 0; kind < Accents.KINDS; kind++) {
                sum += contrast(values, kind, bar);
            }
            best = Math.max(best, sum / Math.sqrt(bar));
        }
        return best;
    }

    private static double contrast(double[][] values, int kind, int bar) {
        double[] sum = new double[bar];
        int[] count = new int[bar];
        double total = 0;
        double squares = 0;
        for (int i = 0; i < values.length; i++) {
            double x = Math.sqrt(values[i][kind]);
            sum[i % bar] += x;
            count[i % bar]++;
            total += x;
            squares += x * x;
        }
        int n = values.length;
        double mean = total / n;
        double between = 0;
        for (int p = 0; p < bar; p++) {
            between += count[p] * Math.pow(sum[p] / count[p] - mean, 2) / n;
        }
        double byChance = (squares / n - mean * mean) * (bar - 1) / n;
        return (between - byChance) / (mean * mean + 1e-9);
    }
}
