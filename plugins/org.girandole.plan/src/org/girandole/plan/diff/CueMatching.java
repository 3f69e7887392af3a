package org.girandole.plan.diff;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.girandole.plan.Plan;
import org.girandole.plan.PlannedCue;
import org.girandole.plan.PlannedSoundtrack;

/**
 * Which cue of the new plan is which of the old: first by key, then by likeness. Two cues are alike when effect, position and shot
 * agree and either they lie within {@link #NEAR_US} of each other or at the same place of a section that was moved or renamed.
 */
final class CueMatching {
    static final long NEAR_US = 10_000_000;
    private static final long SAME_PLACE_US = 50_000;

    private final Map<PlannedCue, PlannedCue> newToOld = new LinkedHashMap<>();
    private final Set<PlannedCue> removed = new LinkedHashSet<>();

    CueMatching(Plan before, Plan after) {
        Map<String, PlannedCue> byKey = new LinkedHashMap<>();
        before.cues().forEach(cue -> byKey.put(cue.key(), cue));
        List<PlannedCue> homeless = new ArrayList<>();
        for (PlannedCue cue : after.cues()) {
            PlannedCue old = byKey.remove(cue.key());
            if (old != null) {
                newToOld.put(cue, old);
            } else {
                homeless.add(cue);
            }
        }
        removed.addAll(byKey.values());
        matchAlike(before, after, homeless);
    }

    /** The old cue of a new one, null when it was added. */
    PlannedCue oldOf(PlannedCue now) {
        return newToOld.get(now);
    }

    /** Old cues that have no new one, in their order. */
    Set<PlannedCue> removed() {
        return removed;
    }

    private void matchAlike(Plan before, Plan after, List<PlannedCue> homeless) {
        Map<List<Object>, List<PlannedCue>> pool = new LinkedHashMap<>();
        for (PlannedCue old : removed) {
            pool.computeIfAbsent(likeness(old), k -> new ArrayList<>()).add(old);
        }
        pool.values().forEach(list -> list.sort(Comparator.comparingLong(cue -> cue.timing().seenUs())));
        for (PlannedCue now : homeless) {
            List<PlannedCue> candidates = pool.getOrDefault(likeness(now), List.of());
            PlannedCue best = nearest(before, after, candidates, now);
            if (best != null) {
                candidates.remove(best);
                removed.remove(best);
                newToOld.put(now, best);
            }
        }
    }

    private static List<Object> likeness(PlannedCue cue) {
        return List.of(cue.what(), cue.position(), cue.shot(), cue.timing().mode());
    }

    private static PlannedCue nearest(Plan before, Plan after, List<PlannedCue> candidates, PlannedCue now) {
        long place = placeInSection(after, now);
        PlannedCue best = null;
        long bestDistance = Long.MAX_VALUE;
        for (PlannedCue old : candidates) {
            long moved = Math.abs(now.timing().seenUs() - old.timing().seenUs());
            boolean samePlace = Math.abs(placeInSection(before, old) - place) <= SAME_PLACE_US;
            long distance = samePlace ? 0 : moved;
            if ((samePlace || moved <= NEAR_US) && distance < bestDistance) {
                best = old;
                bestDistance = distance;
            }
        }
        return best;
    }

    private static long placeInSection(Plan plan, PlannedCue cue) {
        long start = plan.soundtrack(cue.soundtrack()).stream()
                .map(PlannedSoundtrack::sections)
                .flatMap(List::stream)
                .filter(section -> section.name().equals(cue.section()))
                .mapToLong(PlannedSoundtrack.Section::fromUs)
                .findFirst().orElse(0);
        return cue.timing().seenUs() - start;
    }
}
