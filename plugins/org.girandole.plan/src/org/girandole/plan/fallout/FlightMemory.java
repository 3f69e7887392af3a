package org.girandole.plan.fallout;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.function.Supplier;
import org.girandole.physics.PhysicsInputException;
import org.girandole.physics.fallout.Fallout;
import org.girandole.physics.fallout.FalloutResult;
import org.girandole.physics.fallout.FalloutSpec;
import org.girandole.physics.flight.Body;
import org.girandole.physics.flight.MuzzleFit;
import org.girandole.plan.Lately;

/**
 * What was flown lately. A shell flies the same whenever everything is the same that its flight hangs on, and all of that is asked for here:
 * with an old memory and with a new one every answer is the same, but from an old one it comes sooner. Whoever checks one show again and
 * again keeps one; it never grows beyond a limit. May be used by any number of threads.
 */
public final class FlightMemory {
    private static final int MOST_FITS = 2_000;
    private static final int MOST_LANDINGS = 20_000;
    private static final int MOST_ANSWERS = 2_000;
    /** The layers of air of so many winds take some ten megabytes. */
    private static final int MOST_WINDS = 100;

    private final Map<Fit, Speed> speeds;
    private final Map<Landing, FalloutResult> landings;
    private final Map<Object, String> answers = new Lately<>(MOST_ANSWERS);
    private final Map<Conditions, Fallout> winds = new Lately<>(MOST_WINDS);

    public FlightMemory() {
        this(MOST_FITS, MOST_LANDINGS);
    }

    FlightMemory(int mostFits, int mostLandings) {
        speeds = new Lately<>(mostFits);
        landings = new Lately<>(mostLandings);
    }

    /** @throws PhysicsInputException if no believable speed brings the shell to that height in that time */
    double speedFromRiseAndApex(Body body, long riseUs, double apexM, SiteAir air) {
        return speed(new Fit(body, riseUs, apexM, air)).mps();
    }

    /** @throws PhysicsInputException if no believable speed brings the shell to that height */
    double speedFromApex(Body body, double apexM, SiteAir air) {
        return speed(new Fit(body, Fit.ANY_RISE, apexM, air)).mps();
    }

    /** Where each of the specs comes down, in their order; those that are not remembered are flown side by side. */
    List<FalloutResult> landed(Conditions conditions, List<FalloutSpec> specs, int threads) {
        FalloutResult[] results = new FalloutResult[specs.size()];
        List<Integer> missing = new ArrayList<>();
        synchronized (landings) {
            for (int i = 0; i < results.length; i++) {
                results[i] = landings.get(new Landing(conditions, specs.get(i)));
                if (results[i] == null) {
                    missing.add(i);
                }
            }
        }
        if (!missing.isEmpty()) {
            List<FalloutResult> flown = in(conditions).run(missing.stream().map(specs::get).toList(), threads);
            synchronized (landings) {
                for (int i = 0; i < flown.size(); i++) {
                    results[missing.get(i)] = flown.get(i);
                    landings.put(new Landing(conditions, flown.get(i).spec()), flown.get(i));
                }
            }
        }
        return List.of(results);
    }

    /** Ready to fly under these conditions: to build the layers of air takes as long as some eight hundred flights in them. */
    Fallout in(Conditions conditions) {
        synchronized (winds) {
            return winds.computeIfAbsent(conditions, Conditions::fallout);
        }
    }

    /**
     * Words on what would be if something were otherwise, which takes many flights to find.
     *
     * @param asked everything that the words hang on, as a value
     */
    public String answer(Object asked, Supplier<String> found) {
        synchronized (answers) {
            String known = answers.get(asked);
            if (known != null) {
                return known;
            }
        }
        String answer = found.get();
        synchronized (answers) {
            answers.put(asked, answer);
        }
        return answer;
    }

    private Speed speed(Fit fit) {
        synchronized (speeds) {
            Speed known = speeds.get(fit);
            if (known != null) {
                return known;
            }
        }
        Speed speed = fit.speed(this);
        synchronized (speeds) {
            speeds.put(fit, speed);
        }
        return speed;
    }

    private record Landing(Conditions conditions, FalloutSpec spec) {
    }

    /** A muzzle speed that is asked for. */
    private record Fit(Body body, long riseUs, double apexM, SiteAir air) {
        static final long ANY_RISE = -1;

        Speed speed(FlightMemory memory) {
            try {
                MuzzleFit fit = riseUs == ANY_RISE ? MuzzleFit.fromApex(body, apexM, air.air())
                        : MuzzleFit.fromRiseAndApex(body, riseUs, apexM, air.air(), () -> memory.speedFromApex(body, apexM, air));
                return new Speed(fit.speedMps(), null);
            } catch (PhysicsInputException e) {
                return new Speed(0, e);
            }
        }
    }

    /** A speed, or why there is none. */
    private record Speed(double found, PhysicsInputException why) {
        double mps() {
            if (why != null) {
                throw why;
            }
            return found;
        }
    }
}
