package org.girandole.plan.stock;

import java.util.ArrayList;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import org.girandole.plan.Plan;
import org.girandole.plan.PlannedCue;
import org.girandole.plan.script.Effect;
import org.girandole.plan.script.Lot;

/**
 * What a show needs from stock.
 *
 * @param effects effects that the plan uses, in the order of the script
 * @param igniters igniters by type, sorted by name; the empty name stands for effects without a type. Igniters that come with a chain as one
 *     count once.
 * @param ignitersAt the same for each position that has any, positions sorted by name
 */
public record Stock(List<Line> effects, Map<String, Integer> igniters, Map<String, Map<String, Integer>> ignitersAt) {
    public Stock {
        effects = List.copyOf(effects);
        igniters = Collections.unmodifiableMap(new TreeMap<>(igniters));
        Map<String, Map<String, Integer>> copy = new TreeMap<>();
        ignitersAt.forEach((position, types) -> copy.put(position, Collections.unmodifiableMap(new TreeMap<>(types))));
        ignitersAt = Collections.unmodifiableMap(copy);
    }

    /**
     * One effect.
     *
     * @param needed pieces, those inside chains included
     * @param inStock pieces of all its lots; empty when the script has no lot of it, so that nobody knows
     * @param lots its lots in the order of the script
     * @param fromNoLot pieces that no lot has left for
     */
    public record Line(Effect effect, long needed, Optional<Long> inStock, List<LotLine> lots, long fromNoLot) {
        public Line {
            lots = List.copyOf(lots);
        }

        /** Pieces missing, 0 when there are enough; empty when nobody knows what is in stock. */
        public Optional<Long> missing() {
            return inStock.map(there -> Math.max(0, needed - there));
        }
    }

    /** One lot and how many pieces the show draws from it. */
    public record LotLine(Lot lot, long needed) {
        /** Pieces missing in this lot, when cues that name it ask for more than it has. */
        public long missing() {
            return Math.max(0, needed - lot.count());
        }
    }

    /** What the plan needs. */
    public static Stock of(Plan plan) {
        Map<String, Long> needed = new LinkedHashMap<>();
        Map<String, Map<String, Long>> drawn = new LinkedHashMap<>();
        Map<String, Integer> igniters = new TreeMap<>();
        Map<String, Map<String, Integer>> ignitersAt = new TreeMap<>();
        for (PlannedCue cue : plan.cues()) {
            needed.merge(cue.effect().name(), (long) cue.pieces(), Long::sum);
            cue.lot().ifPresent(lot -> drawn.computeIfAbsent(cue.effect().name(), effect -> new LinkedHashMap<>())
                    .merge(lot, (long) cue.pieces(), Long::sum));
            String igniter = cue.effect().igniter().orElse("");
            igniters.merge(igniter, 1, Integer::sum);
            ignitersAt.computeIfAbsent(cue.position(), position -> new TreeMap<>()).merge(igniter, 1, Integer::sum);
        }
        List<Line> lines = new ArrayList<>();
        for (Effect effect : plan.script().effects()) {
            if (needed.containsKey(effect.name())) {
                lines.add(line(plan, effect, needed.get(effect.name()), drawn.getOrDefault(effect.name(), Map.of())));
            }
        }
        return new Stock(lines, igniters, ignitersAt);
    }

    private static Line line(Plan plan, Effect effect, long needed, Map<String, Long> drawn) {
        List<LotLine> lots = plan.script().lots().stream()
                .filter(lot -> lot.effect().equals(effect.name()))
                .map(lot -> new LotLine(lot, drawn.getOrDefault(lot.name(), 0L)))
                .toList();
        Optional<Long> inStock = lots.isEmpty() ? Optional.empty()
                : Optional.of(lots.stream().mapToLong(line -> line.lot().count()).sum());
        return new Line(effect, needed, inStock, lots, needed - drawn.values().stream().mapToLong(Long::longValue).sum());
    }
}
