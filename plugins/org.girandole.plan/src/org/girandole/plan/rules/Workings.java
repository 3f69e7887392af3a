package org.girandole.plan.rules;

import java.util.Collection;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.ConcurrentHashMap;
import java.util.function.Function;
import org.girandole.plan.Plan;
import org.girandole.plan.PlannedCue;
import org.girandole.plan.fallout.FlightMemory;
import org.girandole.plan.fallout.LoadedShells;
import org.girandole.plan.fallout.Nonsense;
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
    private final Map<Class<?>, Once<?>> shared = new ConcurrentHashMap<>();

    /** @param flights what was flown before this check */
    public Workings(Plan plan, FlightMemory flights) {
        this.plan = plan;
        this.flights = flights;
    }

    public Plan plan() {
        return plan;
    }

    /** The hardware and soundtracks of the plan, by name. */
    public ScriptIndex index() {
        return once(ScriptIndex.class, workings -> ScriptIndex.of(workings.plan));
    }

    /** What of the plan cannot be meant. */
    public Nonsense nonsense() {
        return once(Nonsense.class, workings -> Nonsense.of(workings.plan, workings.index()));
    }

    /** One cue of each that go up at one position at one moment from one line: they have the same story to tell. */
    public Collection<PlannedCue> oncePerPlace() {
        return once(OncePerPlace.class, workings -> new OncePerPlace(Cues.oncePerPlace(workings.plan.cues()))).cues;
    }

    /**
     * What the rules of one family share.
     *
     * @param type of what they share; there is one of it for a plan
     * @param made makes it when the first of them asks; may use everything else here, but not what is being made
     */
    public <T> T once(Class<T> type, Function<Workings, T> made) {
        return type.cast(shared.computeIfAbsent(type, t -> new Once<>(made)).of(this));
    }

    /** The shells and salutes of the plan. */
    public synchronized LoadedShells shells() {
        if (shells == null) {
            shells = LoadedShells.of(plan, index(), nonsense(), flights);
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

    private record OncePerPlace(Collection<PlannedCue> cues) {
    }

    /** Made by the first thread that asks; any other waits for it. */
    private static final class Once<T> {
        private final Function<Workings, T> made;
        private T value;

        Once(Function<Workings, T> made) {
            this.made = made;
        }

        synchronized T of(Workings workings) {
            if (value == null) {
                value = made.apply(workings);
            }
            return value;
        }
    }
}
