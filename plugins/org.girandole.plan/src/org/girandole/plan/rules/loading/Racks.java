package org.girandole.plan.rules.loading;

import java.util.List;
import java.util.Set;
import java.util.stream.Collectors;
import org.girandole.plan.Plan;
import org.girandole.plan.rules.Workings;
import org.girandole.plan.script.Rack;

/** The racks of a plan. */
final class Racks {
    private Racks() {
    }

    /** Racks with something loaded, in the order of the script. */
    static List<Rack> used(Workings workings) {
        return workings.once(Used.class, w -> new Used(used(w.plan()))).racks();
    }

    private static List<Rack> used(Plan plan) {
        Set<String> names = plan.cues().stream().flatMap(cue -> cue.tube().stream()).map(tube -> tube.rack())
                .collect(Collectors.toSet());
        return plan.script().racks().stream().filter(rack -> names.contains(rack.name())).toList();
    }

    private record Used(List<Rack> racks) {
    }
}
