package org.girandole.music.analysis;

import java.util.ArrayList;
import java.util.List;

/**
 * Mends bars at tempo changes. Tempi change on bar lines; a tracker that takes up the new tempo a little early, on strokes
 * that fit both, leaves a bar of odd length there. Where the time around such a bar is a whole number of bars in the tempo
 * before or after it, the beats are laid anew in that tempo.
 */
final class BarRepair {
    private static final double CLOSE_BEATS = 0.06;
    private static final int MOST_BARS = 3;
    private static final int TEMPO_BEATS = 8;

    private final List<Double> times = new ArrayList<>();
    private final List<Integer> inBar = new ArrayList<>();
    private final int beatsPerBar;

    /** Frames of the beats and their places in the bar. */
    record Mended(double[] frames, int[] inBar) {
    }

    private BarRepair(double[] frames, int[] inBar, int beatsPerBar) {
        for (int i = 0; i < frames.length; i++) {
            times.add(frames[i]);
            this.inBar.add(inBar[i]);
        }
        this.beatsPerBar = beatsPerBar;
    }

    static Mended mend(double[] frames, int[] inBar, int beatsPerBar) {
        BarRepair repair = new BarRepair(frames, inBar, beatsPerBar);
        if (beatsPerBar > 0) {
            repair.mendAll();
        }
        return new Mended(repair.times.stream().mapToDouble(Double::doubleValue).toArray(),
                repair.inBar.stream().mapToInt(Integer::intValue).toArray());
    }

    private void mendAll() {
        List<Integer> lines = lines();
        for (int l = 0; l + 1 < lines.size(); l++) {
            if (lines.get(l + 1) - lines.get(l) != beatsPerBar && mendAround(lines, l)) {
                lines = lines();
            }
        }
    }

    private List<Integer> lines() {
        List<Integer> lines = new ArrayList<>();
        for (int i = 0; i < inBar.size(); i++) {
            if (inBar.get(i) == 1) {
                lines.add(i);
            }
        }
        return lines;
    }

    /** Tries the shortest stretches around the odd bar first. */
    private boolean mendAround(List<Integer> lines, int odd) {
        for (int bars = 1; bars <= MOST_BARS; bars++) {
            for (int from = odd - bars + 1; from <= odd; from++) {
                if (from >= 0 && from + bars < lines.size() && mend(lines.get(from), lines.get(from + bars))) {
                    return true;
                }
            }
        }
        return false;
    }

    private boolean mend(int from, int to) {
        double span = times.get(to) - times.get(from);
        double before = period(from - TEMPO_BEATS, from);
        double after = period(to, to + TEMPO_BEATS);
        int beats = whole(span, before) > 0 ? whole(span, before) : whole(span, after);
        if (beats <= 0) {
            return false;
        }
        double start = times.get(from);
        times.subList(from, to).clear();
        inBar.subList(from, to).clear();
        for (int i = 0; i < beats; i++) {
            times.add(from + i, start + span * i / beats);
            inBar.add(from + i, i % beatsPerBar + 1);
        }
        return true;
    }

    /** Number of beats of this length in the span, if they make whole bars. */
    private int whole(double span, double period) {
        if (Double.isNaN(period)) {
            return 0;
        }
        int beats = (int) Math.round(span / period);
        boolean fits = beats > 0 && beats % beatsPerBar == 0 && Math.abs(span / period - beats) < CLOSE_BEATS * beats / beatsPerBar;
        return fits ? beats : 0;
    }

    private double period(int from, int to) {
        return from < 0 || to >= times.size() ? Double.NaN : (times.get(to) - times.get(from)) / (to - from);
    }
}
