package org.girandole.plan.allocate;

import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;
import org.girandole.plan.PlannedCue.Pin;
import org.girandole.plan.PlannedCue.Tube;

/** What an earlier allocation gave, by cue key. It is kept wherever it is still possible. */
public record Memory(Map<String, Pin> pins, Map<String, Tube> tubes) {
    /** Nothing remembered: a fresh allocation. */
    public static final Memory NONE = new Memory(Map.of(), Map.of());

    public Memory {
        pins = Collections.unmodifiableMap(new LinkedHashMap<>(pins));
        tubes = Collections.unmodifiableMap(new LinkedHashMap<>(tubes));
    }

    Optional<Pin> pin(Request request) {
        return Optional.ofNullable(pins.get(request.key()));
    }

    Optional<Tube> tube(Request request) {
        return Optional.ofNullable(tubes.get(request.key()));
    }
}
