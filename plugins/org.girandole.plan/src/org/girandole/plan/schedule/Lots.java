package org.girandole.plan.schedule;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.IdentityHashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.girandole.plan.Subject;
import org.girandole.plan.script.Lot;

/**
 * Says from which lot each firing is drawn. Cues that name a lot come first; the others draw from the lots of their effect in the order of
 * declaration, earliest moment first. A chain is made from one lot: it draws from the first that has enough left.
 */
final class Lots {
    private final Map<String, List<Lot>> byEffect = new LinkedHashMap<>();
    private final Map<Lot, Long> left = new IdentityHashMap<>();

    Lots(List<Lot> lots) {
        lots.forEach(lot -> {
            byEffect.computeIfAbsent(lot.effect(), effect -> new ArrayList<>()).add(lot);
            left.put(lot, (long) lot.count());
        });
    }

    /** The lot of each firing by key; firings for which none is left are missing. */
    Map<String, Lot> draw(List<Firing> firings, TroubleLog troubles) {
        Map<String, Lot> drawn = new HashMap<>();
        for (Firing firing : firings) {
            firing.cue().lot().ifPresent(name -> named(firing, name, troubles).ifPresent(lot -> take(firing, lot, drawn)));
        }
        firings.stream()
                .filter(firing -> firing.cue().lot().isEmpty())
                .sorted(Comparator.comparingInt((Firing firing) -> firing.score().slot()).thenComparingLong(Firing::momentUs)
                        .thenComparing(Firing::key))
                .forEach(firing -> any(firing, drawn));
        return drawn;
    }

    private void any(Firing firing, Map<String, Lot> drawn) {
        for (Lot lot : byEffect.getOrDefault(firing.effect().name(), List.of())) {
            if (left.get(lot) >= firing.pieces()) {
                take(firing, lot, drawn);
                return;
            }
        }
    }

    private void take(Firing firing, Lot lot, Map<String, Lot> drawn) {
        left.merge(lot, (long) -firing.pieces(), Long::sum);
        drawn.put(firing.key(), lot);
    }

    private Optional<Lot> named(Firing firing, String name, TroubleLog troubles) {
        Optional<Lot> lot = byEffect.getOrDefault(firing.effect().name(), List.of()).stream()
                .filter(candidate -> candidate.name().equals(name)).findFirst();
        if (lot.isEmpty()) {
            troubles.report(Troubles.NAME_UNKNOWN, "There is no lot " + name + " of " + firing.effect().name())
                    .found(name, "a lot of " + firing.effect().name())
                    .remedy("correct the name, or leave it out to draw from any lot")
                    .about(new Subject(List.of(firing.effect().name()), List.of(firing.position())))
                    .at(firing.cue().source());
        }
        return lot;
    }
}
