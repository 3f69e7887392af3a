package org.girandole.physics.fallout;

import org.girandole.physics.Require;

/**
 * How much each thing varies from shot to shot: standard deviations of normal distributions.
 *
 * @param speedShare muzzle speed, as a share of it
 * @param tiltDeg direction of the tube and of the shell's leaving it, degrees in each of two directions
 * @param windShare wind speed, as a share of it
 * @param windDeg wind direction, degrees
 * @param burstUs time of burst, microseconds
 * @param dragShare drag, as a share of it
 */
public record Scatter(double speedShare, double tiltDeg, double windShare, double windDeg, double burstUs,
        double dragShare) {
    /**
     * Assumed where nothing is measured; common practice without a published source. The tilt takes in the sideways
     * drift of spinning and tumbling shells: with it a shell that does not burst comes down about 0.36 m per millimetre
     * of calibre away on average, the 30 ft per inch that dud-drift trials are quoted for, from memory.
     */
    public static final Scatter USUAL = new Scatter(0.05, 5, 0.2, 15, 150_000, 0.1);
    /** No scatter: every sample is the nominal flight. */
    public static final Scatter NONE = new Scatter(0, 0, 0, 0, 0, 0);

    public Scatter {
        Require.between(speedShare, 0, 0.3, "scatter of the muzzle speed (as a share of 1)", "");
        Require.between(tiltDeg, 0, 20, "scatter of the tilt", "deg");
        Require.between(windShare, 0, 1, "scatter of the wind speed (as a share of 1)", "");
        Require.between(windDeg, 0, 180, "scatter of the wind direction", "deg");
        Require.between(burstUs, 0, 10_000_000, "scatter of the burst", "us");
        Require.between(dragShare, 0, 0.3, "scatter of the drag (as a share of 1)", "");
    }

    /** The same with another scatter of the burst. */
    public Scatter withBurstUs(double newBurstUs) {
        return new Scatter(speedShare, tiltDeg, windShare, windDeg, newBurstUs, dragShare);
    }
}
