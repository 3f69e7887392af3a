package org.girandole.plan.allocate;

import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.girandole.plan.PlannedCue.Pin;
import org.girandole.plan.PlannedCue.Tube;

/**
 * Who got what, by cue key.
 *
 * @param refusals who got none, and why
 */
public record Allocation(Map<String, Pin> pins, Map<String, Tube> tubes, List<Refusal> refusals) {
    public Allocation {
        pins = Collections.unmodifiableMap(new LinkedHashMap<>(pins));
        tubes = Collections.unmodifiableMap(new LinkedHashMap<>(tubes));
        refusals = List.copyOf(refusals);
    }

    public Optional<Pin> pin(String key) {
        return Optional.ofNullable(pins.get(key));
    }

    public Optional<Tube> tube(String key) {
        return Optional.ofNullable(tubes.get(key));
    }

    /** What could not be had. */
    public enum Kind {
        PIN, TUBE
    }

    /**
     * A request that got no pin or no tube.
     *
     * @param limit what stands in the way, a sentence
     * @param found what there is, with its unit
     * @param needed what would be needed
     * @param remedy the smallest addition that would help
     */
    public record Refusal(String key, Kind kind, String limit, String found, String needed, String remedy) {
    }
}
