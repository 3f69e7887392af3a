package org.girandole.plan.fallout;

import java.util.List;
import java.util.Optional;
import org.girandole.physics.fallout.Fallout;
import org.girandole.physics.flight.PowerLawWind;
import org.girandole.physics.flight.Wind;
import org.girandole.physics.geometry.Shape;
import org.girandole.plan.Plan;
import org.girandole.plan.script.Site;

/**
 * What all shells of a site fly in, and what is looked at where they come down.
 *
 * @param wind empty for calm
 * @param shares the shares whose areas are drawn
 * @param watched shapes for which the share that comes down inside is counted
 */
record Conditions(SiteAir air, Optional<Blowing> wind, List<Double> shares, List<Shape> watched) {
    /** The seed of all scatter: a plan must give the same areas on every machine. */
    private static final long SEED = 20_270_619;
    /** Where a crew holds the wind meter: 2 m above the ground (1. SprengV, annex 6, no. 2.1.1.3); higher up it blows harder. */
    private static final double WIND_METER_M = 2;

    Conditions {
        shares = List.copyOf(shares);
        watched = List.copyOf(watched);
    }

    /** The mean wind: a gust is over in seconds, while a shell flies for ten and debris sinks for a minute. Scatter takes gusts in. */
    record Blowing(double fromDeg, double speedMps) {
    }

    /** Those of the plan. */
    static Conditions of(Plan plan, List<Double> shares, List<Shape> watched) {
        return new Conditions(SiteAir.of(plan), plan.script().site().flatMap(Site::wind).map(wind -> new Blowing(wind.fromDeg(), wind.speedMps())),
                shares, watched);
    }

    Fallout fallout() {
        Wind blows = wind.<Wind>map(mean -> new PowerLawWind(mean.fromDeg(), mean.speedMps(), WIND_METER_M, PowerLawWind.OPEN_GROUND))
                .orElse(Wind.CALM);
        return new Fallout(air.air(), blows, SEED, FalloutAreas.SAMPLES, shares, watched);
    }
}
