package org.girandole.plan.stock;

import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;
import org.girandole.plan.Plan;
import org.girandole.plan.PlannedCue;
import org.girandole.plan.script.Igniter;
import org.girandole.plan.stock.Charges.Hazard;
import org.girandole.plan.stock.Charges.Sum;

/**
 * The igniters of a show, as they travel: one for each firing. Spare ones are not known to the script.
 *
 * @param types by igniter type, in the order of the script
 * @param hazards by hazard class and UN number, in the order of the types; what no type says comes last
 * @param unnamed firings whose effect names no igniter type
 */
public record IgniterCharges(Map<String, Sum> types, Map<Hazard, Sum> hazards, long unnamed) {
    public IgniterCharges {
        types = Collections.unmodifiableMap(new LinkedHashMap<>(types));
        hazards = Collections.unmodifiableMap(new LinkedHashMap<>(hazards));
    }

    /** The igniters of a plan. */
    public static IgniterCharges of(Plan plan) {
        Map<String, Long> used = new LinkedHashMap<>();
        long unnamed = 0;
        for (PlannedCue cue : plan.cues()) {
            Optional<String> type = cue.effect().igniter();
            if (type.isPresent()) {
                used.merge(type.get(), 1L, Long::sum);
            } else {
                unnamed++;
            }
        }
        Map<String, Sum> types = new LinkedHashMap<>();
        Map<Hazard, Sum> hazards = new LinkedHashMap<>();
        Sum unknown = Sum.NONE.plus(unnamed, Optional.empty());
        for (Igniter igniter : plan.script().igniters()) {
            Long count = used.get(igniter.name());
            if (count != null) {
                types.put(igniter.name(), Sum.NONE.plus(count, igniter.chargeKg()));
                if (igniter.hazardClass().isPresent()) {
                    Hazard hazard = new Hazard(igniter.hazardClass(), igniter.unNumber());
                    hazards.put(hazard, hazards.getOrDefault(hazard, Sum.NONE).plus(count, igniter.chargeKg()));
                } else {
                    unknown = unknown.plus(count, igniter.chargeKg());
                }
            }
        }
        if (unknown.pieces() > 0) {
            hazards.put(new Hazard(Optional.empty(), Optional.empty()), unknown);
        }
        return new IgniterCharges(types, hazards, unnamed);
    }
}
