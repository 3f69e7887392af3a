package org.girandole.plan.rules;

import java.util.List;
import java.util.Optional;
import org.girandole.plan.Plan;
import org.girandole.plan.fallout.FlightMemory;
import org.girandole.plan.fallout.LoadedShells;
import org.girandole.plan.rehearse.GoneThrough;
import org.girandole.plan.script.Site;

/**
 * A plan with what several rules need of it, worked out once: when the first of them asks. Nothing in it changes what a rule finds. May be
 * used by any number of threads.
 */
public final class Workings {
    private final Plan plan;
    private final FlightMemory flights;
    private LoadedShells shells;
    private List<GoneThrough> nights;

    /** @param flights what was flown before this check */
    public Workings(Plan plan, FlightMemory flights) {
        this.plan = plan;
        this.flights = flights;
    }

    public Plan plan() {
        return plan;
    }

    /** The shells and salutes of the plan. */
    public synchronized LoadedShells shells() {
        if (shells == null) {
            shells = LoadedShells.of(plan, flights);
        }
        return shells;
    }

    /** The nights that the script rehearses, in its order. */
    public synchronized List<GoneThrough> nights() {
        if (nights == null) {
            nights = plan.script().rehearsals().stream().map(rehearsal -> GoneThrough.of(plan, rehearsal)).toList();
        }
        return nights;
    }

    /** The same in another wind, on which neither shells nor rehearsals hang. */
    public synchronized Workings inWind(Optional<Site.Wind> wind) {
        Workings other = new Workings(plan.inWind(wind), flights);
        other.shells = shells();
        other.nights = nights;
        return other;
    }
}
