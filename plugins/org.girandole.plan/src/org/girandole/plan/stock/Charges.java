package org.girandole.plan.stock;

import java.util.ArrayList;
import java.util.Collections;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.girandole.plan.Plan;
import org.girandole.plan.PlannedCue;
import org.girandole.plan.script.Effect;

/**
 * Net explosive content of a show. A piece whose charge the catalogue does not say counts as a piece without charge, never as nought
 * kilograms: whoever prints a sum must print those beside it.
 *
 * @param hazards by hazard class and UN number, sorted; what the catalogue does not say comes last
 * @param positions by position, in the order of the site
 * @param effects by effect, in the order of the script
 */
public record Charges(Sum total, Map<Hazard, Sum> hazards, Map<String, Sum> positions, Map<String, Sum> effects) {
    public Charges {
        hazards = Collections.unmodifiableMap(new LinkedHashMap<>(hazards));
        positions = Collections.unmodifiableMap(new LinkedHashMap<>(positions));
        effects = Collections.unmodifiableMap(new LinkedHashMap<>(effects));
    }

    /** A way of transport: hazard class and UN number as the catalogue has them. */
    public record Hazard(Optional<String> hazardClass, Optional<String> unNumber) {
        private static final Comparator<Optional<String>> MISSING_LAST = Comparator
                .comparing((Optional<String> text) -> text.isEmpty()).thenComparing(text -> text.orElse(""));

        static Hazard of(Effect effect) {
            return new Hazard(effect.hazardClass(), effect.unNumber());
        }
    }

    /**
     * A sum over pieces.
     *
     * @param pieces all pieces, those inside chains included
     * @param kg net explosive content of those whose charge is known
     * @param withoutCharge how many of the pieces have a charge that nobody said
     */
    public record Sum(long pieces, double kg, long withoutCharge) {
        static final Sum NONE = new Sum(0, 0, 0);

        Sum plus(long count, Optional<Double> chargeKg) {
            return new Sum(pieces + count, kg + count * chargeKg.orElse(0.0), withoutCharge + (chargeKg.isPresent() ? 0 : count));
        }

        /** Whether the charge of every piece is known. */
        public boolean complete() {
            return withoutCharge == 0;
        }
    }

    /** The charges of a plan. */
    public static Charges of(Plan plan) {
        // Sums are taken effect by effect in the order of the script, so that they do not depend on the order of firing.
        Map<String, Map<String, Long>> pieces = new LinkedHashMap<>();
        for (PlannedCue cue : plan.cues()) {
            pieces.computeIfAbsent(cue.effect().name(), effect -> new LinkedHashMap<>()).merge(cue.position(), (long) cue.pieces(), Long::sum);
        }
        Sum total = Sum.NONE;
        Map<Hazard, Sum> hazards = new LinkedHashMap<>();
        Map<String, Sum> positions = new LinkedHashMap<>();
        plan.script().site().ifPresent(site -> site.positions().forEach(position -> positions.put(position.name(), Sum.NONE)));
        Map<String, Sum> effects = new LinkedHashMap<>();
        for (Effect effect : plan.script().effects()) {
            Map<String, Long> byPosition = pieces.getOrDefault(effect.name(), Map.of());
            for (Map.Entry<String, Long> here : byPosition.entrySet()) {
                total = total.plus(here.getValue(), effect.chargeKg());
                add(hazards, Hazard.of(effect), here.getValue(), effect);
                add(positions, here.getKey(), here.getValue(), effect);
                add(effects, effect.name(), here.getValue(), effect);
            }
        }
        positions.values().removeIf(sum -> sum.pieces() == 0);
        return new Charges(total, sorted(hazards), positions, effects);
    }

    private static <K> void add(Map<K, Sum> sums, K key, long count, Effect effect) {
        sums.put(key, sums.getOrDefault(key, Sum.NONE).plus(count, effect.chargeKg()));
    }

    private static Map<Hazard, Sum> sorted(Map<Hazard, Sum> sums) {
        List<Hazard> order = new ArrayList<>(sums.keySet());
        order.sort(Comparator.comparing(Hazard::hazardClass, Hazard.MISSING_LAST).thenComparing(Hazard::unNumber, Hazard.MISSING_LAST));
        Map<Hazard, Sum> sorted = new LinkedHashMap<>();
        order.forEach(hazard -> sorted.put(hazard, sums.get(hazard)));
        return sorted;
    }
}
