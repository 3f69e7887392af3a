package org.girandole.benchmarks.music;

import java.util.Arrays;

/**
 * Scores found moments against true ones as C. Raffel et al., mir_eval: a transparent implementation of common MIR metrics,
 * ISMIR 2014, does: each true moment is matched with at most one found moment within a window, as many as possible.
 *
 * @param matched number of pairs
 * @param found   number of found moments
 * @param true_   number of true moments
 */
public record EventScores(int matched, int found, int true_) {
    public static final long ONSET_WINDOW_US = 50_000;
    public static final long BEAT_WINDOW_US = 70_000;
    /** Beats before this are not scored: a listener needs time to find them. */
    public static final long BEATS_FROM_US = 5_000_000;

    /** Onsets: window of 50 ms. */
    public static EventScores onsets(long[] trueUs, long[] foundUs) {
        return of(trueUs, foundUs, ONSET_WINDOW_US);
    }

    /** Beats: window of 70 ms, the first 5 s left out. */
    public static EventScores beats(long[] trueUs, long[] foundUs) {
        return of(from5s(trueUs), from5s(foundUs), BEAT_WINDOW_US);
    }

    private static long[] from5s(long[] us) {
        return Arrays.stream(us).filter(t -> t >= BEATS_FROM_US).toArray();
    }

    /**
     * Windows are all of one width, so taking in order of time the first found moment that still fits is a largest matching.
     */
    static EventScores of(long[] trueUs, long[] foundUs, long windowUs) {
        long[] t = trueUs.clone();
        long[] f = foundUs.clone();
        Arrays.sort(t);
        Arrays.sort(f);
        int matched = 0;
        int next = 0;
        for (long moment : t) {
            while (next < f.length && f[next] < moment - windowUs) {
                next++;
            }
            if (next < f.length && f[next] <= moment + windowUs) {
                matched++;
                next++;
            }
        }
        return new EventScores(matched, f.length, t.length);
    }

    public EventScores plus(EventScores other) {
        return new EventScores(matched + other.matched, found + other.found, true_ + other.true_);
    }

    public double precision() {
        return found == 0 ? 0 : (double) matched / found;
    }

    public double recall() {
        return true_ == 0 ? 0 : (double) matched / true_;
    }

    public double f() {
        return matched == 0 ? 0 : 2 * precision() * recall() / (precision() + recall());
    }
}
