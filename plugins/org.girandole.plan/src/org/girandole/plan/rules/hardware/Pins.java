package org.girandole.plan.rules.hardware;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.girandole.plan.Plan;
import org.girandole.plan.PlannedCue;
import org.girandole.plan.rules.Workings;

/** The firings of a plan by what they share. */
final class Pins {
    private Pins() {
    }

    /** The firings on each pin, in firing order. */
    static Map<Pin, List<PlannedCue>> used(Workings workings) {
        return workings.once(Used.class, w -> new Used(used(w.plan()))).pins();
    }

    private static Map<Pin, List<PlannedCue>> used(Plan plan) {
        Map<Pin, List<PlannedCue>> used = new LinkedHashMap<>();
        for (PlannedCue cue : plan.cues()) {
            cue.pin().ifPresent(pin -> used.computeIfAbsent(new Pin(pin.module(), pin.pin()), k -> new ArrayList<>()).add(cue));
        }
        return used;
    }

    /** The firings of each module during each soundtrack, by firing time. Times of two soundtracks cannot be compared. */
    static Map<ModuleRun, List<PlannedCue>> byModule(Plan plan) {
        Map<ModuleRun, List<PlannedCue>> used = new LinkedHashMap<>();
        for (PlannedCue cue : plan.cues()) {
            cue.pin().ifPresent(pin -> used.computeIfAbsent(new ModuleRun(pin.module(), cue.soundtrack()), k -> new ArrayList<>())
                    .add(cue));
        }
        used.values().forEach(cues -> cues.sort(Comparator.comparingLong(cue -> cue.timing().fireUs())));
        return used;
    }

    private record Used(Map<Pin, List<PlannedCue>> pins) {
    }

    record Pin(String module, int pin) {
    }

    record ModuleRun(String module, String soundtrack) {
    }
}
