package org.girandole.plan.fallout;

import java.util.LinkedHashMap;
import java.util.Map;
import org.girandole.physics.PhysicsInputException;
import org.girandole.physics.flight.Body;
import org.girandole.physics.flight.MuzzleFit;

/**
 * Muzzle speeds that were fitted lately. A fit takes milliseconds, and one plan asks for the same few again in every rule and in every wind
 * that is tried; the answer hangs on nothing but what is asked.
 */
final class Fits {
    private static final int KEPT = 1000;
    private static final Map<Asked, Fit> LATELY = new LinkedHashMap<>(16, 0.75f, true) {
        private static final long serialVersionUID = 1L;

        @Override
        protected boolean removeEldestEntry(Map.Entry<Asked, Fit> eldest) {
            return size() > KEPT;
        }
    };

    private Fits() {
    }

    /** @throws PhysicsInputException if no believable speed brings the shell to that height in that time */
    static double fromRiseAndApex(Body body, long riseUs, double apexM, SiteAir air) {
        return fit(new Asked(body, riseUs, apexM, air)).speedMps();
    }

    /** @throws PhysicsInputException if no believable speed brings the shell to that height */
    static double fromApex(Body body, double apexM, SiteAir air) {
        return fit(new Asked(body, Asked.ANY_RISE, apexM, air)).speedMps();
    }

    private static Fit fit(Asked asked) {
        synchronized (LATELY) {
            Fit known = LATELY.get(asked);
            if (known != null) {
                return known;
            }
        }
        Fit fit = asked.fit();
        synchronized (LATELY) {
            LATELY.put(asked, fit);
        }
        return fit;
    }

    private record Asked(Body body, long riseUs, double apexM, SiteAir air) {
        static final long ANY_RISE = -1;

        Fit fit() {
            try {
                return new Fit((riseUs == ANY_RISE ? MuzzleFit.fromApex(body, apexM, air.air()) : MuzzleFit.fromRiseAndApex(body, riseUs, apexM, air.air()))
                        .speedMps(), null);
            } catch (PhysicsInputException e) {
                return new Fit(0, e);
            }
        }
    }

    /** A speed, or why there is none. */
    private record Fit(double found, PhysicsInputException why) {
        double speedMps() {
            if (why != null) {
                throw why;
            }
            return found;
        }
    }
}
