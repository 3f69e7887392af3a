package org.girandole.plan.rehearse;

import java.util.List;
import java.util.TreeSet;

/**
 * A stretch of the night during which a controller reckons time in one way. Its reckoning is
 * {@code night + offset + carried error + error of the way}.
 *
 * @param sinceUs night time of the last certain moment the reckoning hangs on
 * @param offsetUs what the code last read more than night time
 * @param carriedUs error of the reckoning at {@code sinceUs}
 * @param by who reckons
 */
record Stretch(long fromUs, long toUs, Way way, long sinceUs, long offsetUs, long carriedUs, ControllerModel by) {
    /** How time is reckoned. */
    enum Way {
        /** Not at all. */
        NONE,
        /** By the code, an error carried from before being made good. */
        CODE,
        /** By the own clock. */
        OWN_CLOCK
    }

    private static final double MILLION = 1e6;
    private static final double DAY_US = 86_400e6;
    /** A bent course is told in so many straight ones. */
    private static final int PIECES = 16;

    boolean reckons() {
        return way != Way.NONE;
    }

    /** The reckoned show time. */
    long reckonedUs(long nightUs) {
        return nightUs + offsetUs + errorUs(nightUs);
    }

    /** How far the reckoning is ahead of the code as last heard. */
    long errorUs(long nightUs) {
        long elapsedUs = nightUs - sinceUs;
        if (way == Way.OWN_CLOCK) {
            return carriedUs + by.clock().errorUs(elapsedUs);
        }
        if (carriedUs == 0) {
            return 0;
        }
        long madeGoodUs = (long) (elapsedUs * by.slewPpm() / MILLION);
        return Long.signum(carriedUs) * Math.max(0, Math.abs(carriedUs) - madeGoodUs);
    }

    /** Night times inside of the stretch between which the error runs straight, or nearly so where a clock ages; in order. */
    List<Long> bendsUs() {
        TreeSet<Long> bends = new TreeSet<>();
        if (way == Way.CODE && carriedUs != 0 && by.slewPpm() > 0) {
            bends.add(sinceUs + (long) Math.ceil(Math.abs(carriedUs) * MILLION / by.slewPpm()));
        }
        double ageing = by.clock().ageingPpmPerDay();
        if (way == Way.OWN_CLOCK && ageing != 0) {
            // Where a clock turns from slow to fast its error is largest.
            bends.add(sinceUs + (long) Math.min(-by.clock().ppm() / ageing * DAY_US, DAY_US));
            for (int i = 1; i < PIECES; i++) {
                bends.add(fromUs + (toUs - fromUs) / PIECES * i);
            }
        }
        return List.copyOf(bends.subSet(fromUs, false, Math.max(fromUs + 1, toUs), false));
    }

    /** How far the reckoning may be off, by what is known of the clock. */
    long boundUs(long nightUs) {
        return way == Way.OWN_CLOCK ? Math.abs(carriedUs) + Math.abs(by.clock().errorUs(nightUs - sinceUs)) : Math.abs(carriedUs);
    }

    Stretch until(long us) {
        return new Stretch(fromUs, us, way, sinceUs, offsetUs, carriedUs, by);
    }

    Stretch from(long us) {
        return new Stretch(us, toUs, way, sinceUs, offsetUs, carriedUs, by);
    }
}
