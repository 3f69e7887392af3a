package org.girandole.plan.rules.distance;

import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.girandole.plan.PlannedCue;
import org.girandole.plan.fallout.Nonsense;
import org.girandole.plan.rules.Workings;
import org.girandole.plan.script.Point;

/** Everything that is fired from somewhere, once of what is alike in all that a distance hangs on. */
final class Fired {
    private final List<Firing> firings;
    private final List<Nonsense.Why> uncomputed;

    /**
     * Firings that are alike.
     *
     * @param first the first of them
     * @param from where they are fired
     */
    record Firing(PlannedCue first, Point from) {
    }

    /** All that a distance hangs on, and what it is called by. */
    private record Alike(String what, String effect, Optional<String> lot, PlannedCue.Aim aim, String position, Point from) {
        static Alike of(PlannedCue cue, Point from) {
            return new Alike(cue.what(), cue.effect().name(), cue.lot(), cue.aim(), cue.position(), from);
        }
    }

    private Fired(Workings workings) {
        Ground ground = Ground.of(workings);
        Map<Alike, Firing> alike = new LinkedHashMap<>();
        Set<Nonsense.Why> whys = new LinkedHashSet<>();
        for (PlannedCue cue : workings.plan().cues()) {
            Optional<Nonsense.Why> why = ground.nonsense().distance(cue);
            if (why.isPresent()) {
                whys.add(why.get());
            } else {
                ground.firedFrom(cue).ifPresent(from -> alike.putIfAbsent(Alike.of(cue, from), new Firing(cue, from)));
            }
        }
        firings = List.copyOf(alike.values());
        uncomputed = List.copyOf(whys);
    }

    static Fired of(Workings workings) {
        return workings.once(Fired.class, Fired::new);
    }

    /** In firing order; without those of which no distance may be computed, and those from places that the site does not have. */
    List<Firing> firings() {
        return firings;
    }

    /** Why no distance may be computed of the others. */
    List<Nonsense.Why> uncomputed() {
        return uncomputed;
    }
}
