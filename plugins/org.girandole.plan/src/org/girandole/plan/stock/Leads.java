package org.girandole.plan.stock;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import org.girandole.plan.Plan;
import org.girandole.plan.PlannedCue;
import org.girandole.plan.PlannedCue.Circuit;
import org.girandole.plan.PlannedCue.Pin;
import org.girandole.plan.script.FiringSystem;
import org.girandole.plan.script.Site;

/**
 * The leads to be cut for a show: one for each pin in use, however many igniters share it, from where the module stands to the furthest of
 * them. Lengths are those of the circuits, slack included, rounded up to the metre: a lead that is too long is laid in a loop, one that is
 * too short is cut again.
 *
 * @param wire the firing system's lead wire, when the script names one
 * @param positions by position, in the order of the site; positions that the site does not know follow by name
 * @param withoutPin igniters that have no pin yet, for which no lead can be counted
 */
public record Leads(Optional<String> wire, List<AtPosition> positions, int withoutPin) {
    /** What is left over when a whole number of metres was computed in binary fractions. */
    private static final double NOTHING_M = 1e-6;

    public Leads {
        positions = List.copyOf(positions);
    }

    /**
     * The leads that run to one position.
     *
     * @param cuts the longest first
     * @param unknown pins whose lead the plan has no length for, by module and number
     */
    public record AtPosition(String position, List<Cut> cuts, List<Pin> unknown) {
        public AtPosition {
            cuts = List.copyOf(cuts);
            unknown = List.copyOf(unknown);
        }

        /** How many leads of known length there are. */
        public int count() {
            return cuts.stream().mapToInt(cut -> cut.pins().size()).sum();
        }

        /** Metres of wire for the leads of known length. */
        public long totalM() {
            return cuts.stream().mapToLong(Cut::totalM).sum();
        }
    }

    /**
     * Leads of one length.
     *
     * @param lengthM one way, whole metres
     * @param pins the pins that they are for, by module and number
     */
    public record Cut(long lengthM, List<Pin> pins) {
        public Cut {
            pins = List.copyOf(pins);
        }

        /** Metres of wire. */
        public long totalM() {
            return lengthM * pins.size();
        }
    }

    /** A pin, whether its number was written by hand or not. */
    private record Name(String module, int pin) {
    }

    /** Metres of wire for all leads of known length. */
    public long totalM() {
        return positions.stream().mapToLong(AtPosition::totalM).sum();
    }

    /** How many leads of known length there are. */
    public int count() {
        return positions.stream().mapToInt(AtPosition::count).sum();
    }

    /** How many leads have no known length. */
    public int unknown() {
        return positions.stream().mapToInt(at -> at.unknown().size()).sum();
    }

    /** Whether every igniter has a lead of known length. */
    public boolean complete() {
        return withoutPin == 0 && unknown() == 0;
    }

    /** The leads of a plan. */
    public static Leads of(Plan plan) {
        Map<Name, PlannedCue> byPin = new LinkedHashMap<>();
        plan.cues().forEach(cue -> cue.pin().ifPresent(pin -> byPin.putIfAbsent(new Name(pin.module(), pin.pin()), cue)));
        Map<String, List<PlannedCue>> byPosition = new TreeMap<>();
        byPin.values().forEach(cue -> byPosition.computeIfAbsent(cue.position(), position -> new ArrayList<>()).add(cue));
        List<AtPosition> positions = new ArrayList<>();
        for (Site.Position position : plan.script().site().map(Site::positions).orElse(List.of())) {
            Optional.ofNullable(byPosition.remove(position.name())).ifPresent(cues -> positions.add(at(position.name(), cues)));
        }
        byPosition.forEach((position, cues) -> positions.add(at(position, cues)));
        return new Leads(plan.script().firingSystem().flatMap(FiringSystem::wire), positions,
                (int) plan.cues().stream().filter(cue -> cue.pin().isEmpty()).count());
    }

    private static AtPosition at(String position, List<PlannedCue> cues) {
        Map<Long, List<Pin>> byLength = new TreeMap<>(Comparator.reverseOrder());
        List<Pin> unknown = new ArrayList<>();
        for (PlannedCue cue : cues) {
            Pin pin = cue.pin().orElseThrow();
            cue.circuit().map(Circuit::leadM).ifPresentOrElse(
                    leadM -> byLength.computeIfAbsent((long) Math.ceil(leadM - NOTHING_M), length -> new ArrayList<>()).add(pin),
                    () -> unknown.add(pin));
        }
        return new AtPosition(position, byLength.entrySet().stream().map(cut -> new Cut(cut.getKey(), sorted(cut.getValue()))).toList(),
                sorted(unknown));
    }

    private static List<Pin> sorted(List<Pin> pins) {
        return pins.stream().sorted(Comparator.comparing(Pin::module).thenComparingInt(Pin::pin)).toList();
    }
}
