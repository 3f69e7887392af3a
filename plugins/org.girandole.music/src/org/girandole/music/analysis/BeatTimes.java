package org.girandole.music.analysis;

import java.util.List;

/**
 * Moves beats from the 10 ms of the curves to the microsecond: to the onset that is played there, if one is near; then to the
 * straight line through the beats around, where they lie on one, because a tempo is steadier than any single stroke.
 */
final class BeatTimes {
    private static final long NEAR_US = 45_000;
    private static final int REACH = 4;
    private static final double STRAIGHT_US = 18_000;

    private BeatTimes() {
    }

    static long[] refine(double[] frames, List<Onset> onsets) {
        double[] played = new double[frames.length];
        int next = 0;
        for (int i = 0; i < frames.length; i++) {
            double at = frames[i] * Features.STEP_US;
            while (next < onsets.size() && onsets.get(next).timeUs() < at - NEAR_US) {
                next++;
            }
            played[i] = at;
            double nearest = NEAR_US;
            for (int j = next; j < onsets.size() && onsets.get(j).timeUs() <= at + NEAR_US; j++) {
                double away = Math.abs(onsets.get(j).timeUs() - at);
                if (away < nearest) {
                    nearest = away;
                    played[i] = onsets.get(j).timeUs();
                }
            }
        }
        long[] times = new long[frames.length];
        for (int i = 0; i < frames.length; i++) {
            times[i] = Math.max(0, Math.round(straightened(played, i)));
        }
        return times;
    }

    private static double straightened(double[] played, int i) {
        int from = Math.max(0, i - REACH);
        int to = Math.min(played.length - 1, i + REACH);
        int n = to - from + 1;
        if (n < 4) {
            return played[i];
        }
        double meanX = 0;
        double meanY = 0;
        for (int j = from; j <= to; j++) {
            meanX += (j - i) / (double) n;
            meanY += played[j] / n;
        }
        double xx = 0;
        double xy = 0;
        for (int j = from; j <= to; j++) {
            xx += (j - i - meanX) * (j - i - meanX);
            xy += (j - i - meanX) * (played[j] - meanY);
        }
        double slope = xy / xx;
        double middle = meanY - slope * meanX;
        for (int j = from; j <= to; j++) {
            // A bend, or a stroke out of place that drags the line along.
            if (Math.abs(played[j] - middle - slope * (j - i)) > STRAIGHT_US) {
                return played[i];
            }
        }
        return middle;
    }
}
