package org.girandole.physics.fallout;

import org.girandole.physics.Require;
import org.girandole.physics.PhysicsInputException;

/**
 * What comes down from a burst.
 *
 * @param slowestMps terminal speed at sea level of the lightest piece that counts, m/s
 * @param fastestMps terminal speed at sea level of the heaviest piece, m/s; all between are equally likely
 * @param radiusM how far from the burst the pieces begin to fall, metres; every place in that ball is equally likely
 */
public record Debris(double slowestMps, double fastestMps, double radiusM) {
    /** Terminal speeds of pieces of casing, from paper to plugs: common practice, no published source. */
    private static final double USUAL_SLOWEST_MPS = 6;
    private static final double USUAL_FASTEST_MPS = 15;

    public Debris {
        Require.positive(slowestMps, "terminal speed of the lightest debris", "m/s");
        Require.positive(fastestMps, "terminal speed of the heaviest debris", "m/s");
        Require.notNegative(radiusM, "radius of the burst", "m");
        if (slowestMps > fastestMps) {
            throw new PhysicsInputException("debris of " + slowestMps + " to " + fastestMps + " m/s",
                    "the slower terminal speed first", "exchange the two");
        }
    }

    /** Usual debris of a burst of this diameter. */
    public static Debris usual(double spreadM) {
        return new Debris(USUAL_SLOWEST_MPS, USUAL_FASTEST_MPS, Require.notNegative(spreadM, "spread", "m") / 2);
    }
}
