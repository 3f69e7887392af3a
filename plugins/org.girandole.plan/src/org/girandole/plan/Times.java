package org.girandole.plan;

import java.util.Locale;

/** Show times and durations as words, the same in every locale. */
public final class Times {
    private static final long US_PER_MS = 1000;
    private static final long MS_PER_SECOND = 1000;
    private static final long MS_PER_MINUTE = 60 * MS_PER_SECOND;

    private Times() {
    }

    /**
     * A show time as {@code m:ss.mmm}, to the nearest millisecond, halves upwards; {@code -0:01.250} before the first note.
     */
    public static String clock(long us) {
        long ms = Math.floorDiv(us + US_PER_MS / 2, US_PER_MS);
        long size = Math.abs(ms);
        return String.format(Locale.ROOT, "%s%d:%02d.%03d", ms < 0 ? "-" : "", size / MS_PER_MINUTE,
                size % MS_PER_MINUTE / MS_PER_SECOND, size % MS_PER_SECOND);
    }

    /** A show time as {@code m:ss.mmm} where that is exact, else with the microseconds: {@code 1:02.480333}. */
    public static String exactClock(long us) {
        if (us % US_PER_MS == 0) {
            return clock(us);
        }
        long size = Math.abs(us);
        return String.format(Locale.ROOT, "%s%d:%02d.%06d", us < 0 ? "-" : "", size / 60_000_000, size / 1_000_000 % 60,
                size % 1_000_000);
    }

    /** A duration in seconds with three decimals, six where three are not exact: {@code 2.400 s}. */
    public static String seconds(long us) {
        long size = Math.abs(us);
        String sign = us < 0 ? "-" : "";
        return size % US_PER_MS == 0
                ? String.format(Locale.ROOT, "%s%d.%03d s", sign, size / 1_000_000, size / US_PER_MS % MS_PER_SECOND)
                : String.format(Locale.ROOT, "%s%d.%06d s", sign, size / 1_000_000, size % 1_000_000);
    }

    /** A duration in milliseconds, with as many decimals as it needs: {@code 250 ms}, {@code 2.5 ms}. */
    public static String millis(long us) {
        long size = Math.abs(us);
        String digits = String.format(Locale.ROOT, "%d.%03d", size / US_PER_MS, size % US_PER_MS);
        return (us < 0 ? "-" : "") + digits.replaceAll("\\.?0+$", "") + " ms";
    }
}
