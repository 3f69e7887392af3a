package org.girandole.plan.rehearse;

import java.util.ArrayList;
import java.util.List;

/** How a controller reckoned through the night: stretches without gaps, and what it said meanwhile. */
record Course(List<Stretch> stretches, List<StateChange> changes) {
    Course {
        stretches = List.copyOf(stretches);
        changes = List.copyOf(changes);
    }

    ControllerState stateAt(long us) {
        int low = 0;
        int high = changes.size();
        while (low < high) {
            int middle = (low + high) >>> 1;
            if (changes.get(middle).atUs() <= us) {
                low = middle + 1;
            } else {
                high = middle;
            }
        }
        return low == 0 ? ControllerState.NO_SIGNAL : changes.get(low - 1).state();
    }

    /** This one until a moment, then the other. */
    Course then(Course other, long atUs) {
        List<Stretch> all = new ArrayList<>();
        stretches.stream().filter(s -> s.fromUs() < atUs).map(s -> s.until(Math.min(atUs, s.toUs()))).forEach(all::add);
        other.stretches.stream().filter(s -> s.toUs() > atUs).map(s -> s.from(Math.max(atUs, s.fromUs()))).forEach(all::add);
        List<StateChange> said = new ArrayList<>();
        changes.stream().filter(c -> c.atUs() < atUs).forEach(said::add);
        said.add(new StateChange(atUs, other.stateAt(atUs)));
        other.changes.stream().filter(c -> c.atUs() > atUs).forEach(said::add);
        return new Course(all, said);
    }
}
