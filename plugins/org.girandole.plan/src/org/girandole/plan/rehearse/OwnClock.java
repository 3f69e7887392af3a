package org.girandole.plan.rehearse;

/**
 * How a controller's own clock goes wrong while it has no timecode. The reckoned time is ahead of the true one by
 * {@code x(t) = y t + D t^2 / 2}, t from the last certain moment: the time error model of ITU-T G.810 (from memory) without its noise.
 *
 * @param ppm fractional frequency deviation y in parts per million; above nought the clock is fast, and cues come early
 * @param ageingPpmPerDay change D of the deviation, parts per million a day
 */
public record OwnClock(double ppm, double ageingPpmPerDay) {
    private static final double MILLION = 1e6;
    private static final double DAY_US = 86_400e6;
    /** At 10 % off it is no clock, and time might stand still. */
    private static final double MOST_PPM = 100_000;
    private static final double MOST_AGEING = 1000;

    public OwnClock {
        if (!(Math.abs(ppm) <= MOST_PPM) || !(Math.abs(ageingPpmPerDay) <= MOST_AGEING)) {
            throw new RehearsalException("A clock off by " + ppm + " ppm, ageing " + ageingPpmPerDay + " ppm a day; expected at most "
                    + (long) MOST_PPM + " ppm and " + (long) MOST_AGEING + " ppm a day");
        }
    }

    /** How far the clock is ahead after this long on its own, microseconds, to the nearest; negative when it is behind. */
    public long errorUs(long elapsedUs) {
        return Math.round(exactErrorUs(elapsedUs));
    }

    private double exactErrorUs(double elapsedUs) {
        return (ppm * elapsedUs + ageingPpmPerDay / DAY_US * elapsedUs * elapsedUs / 2) / MILLION;
    }

    /**
     * How long the clock may go on its own until it is off by this much: the least positive root of {@code |x(t)| = limit}.
     *
     * @return microseconds; {@link Long#MAX_VALUE} when it never is
     */
    public long withinUs(long limitUs) {
        double half = ageingPpmPerDay / DAY_US / 2;
        double first = Math.min(root(half, ppm, limitUs * MILLION), root(half, ppm, -limitUs * MILLION));
        return first >= Long.MAX_VALUE ? Long.MAX_VALUE : (long) first;
    }

    /** The least positive t with {@code a t^2 + b t = c}. */
    private static double root(double a, double b, double c) {
        if (a == 0) {
            double only = c / b;
            return only > 0 ? only : Double.POSITIVE_INFINITY;
        }
        double under = b * b + 4 * a * c;
        if (under < 0) {
            return Double.POSITIVE_INFINITY;
        }
        double q = -(b + Math.copySign(Math.sqrt(under), b)) / 2;
        double one = q / a;
        double two = q == 0 ? Double.POSITIVE_INFINITY : -c / q;
        double least = Double.POSITIVE_INFINITY;
        for (double each : new double[] {one, two}) {
            if (each > 0 && each < least) {
                least = each;
            }
        }
        return least;
    }
}
