package org.girandole.plan.meter;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.IntStream;
import org.girandole.plan.Plan;
import org.girandole.plan.PlannedCue;
import org.girandole.plan.PlannedCue.Circuit;
import org.girandole.plan.script.Module;

/**
 * Judges the crew's readings. A reading is right within the band of its pin; where two wrong readings are each right for the other's pin, the two
 * are named as probably swapped. Nothing is repaired or assumed: a pin that was not measured is not right.
 *
 * @param lines one for each pin that has an igniter or a reading, in the order of modules and pins
 */
public record MeterCheck(List<Line> lines) {
    /** Below this share of the least reading the igniter is taken to be bridged. Common practice, no source. */
    private static final double SHORT_SHARE = 0.5;
    /** Above this multiple of the greatest reading the loop is taken to be open, whatever the meter shows. Common practice, no source. */
    private static final double OPEN_MULTIPLE = 10;

    public MeterCheck {
        lines = List.copyOf(lines);
    }

    /** What a reading says. */
    public enum Verdict {
        RIGHT("right"), OPEN("open: no path"), SHORT("short: the igniter is bridged"), HIGH("too high"), LOW("too low"),
        NOT_MEASURED("not measured"), NOT_KNOWN("expectation not known"), NOT_WIRED("something is wired here that the plan does not have"),
        NO_SUCH_PIN("no such pin in the plan");

        private final String words;

        Verdict(String words) {
            this.words = words;
        }

        public String words() {
            return words;
        }

        boolean wrong() {
            return this == OPEN || this == SHORT || this == HIGH || this == LOW || this == NOT_WIRED;
        }
    }

    /**
     * One pin.
     *
     * @param cues what the plan has on it
     * @param expected its circuit, when the script says enough to compute one
     * @param measured whether there is a reading; {@code ohm} is empty for an open circuit
     * @param swappedWith the pin of the same field with which it has probably been exchanged
     */
    public record Line(String module, int pin, List<PlannedCue> cues, Optional<Circuit> expected, boolean measured, OptionalDouble ohm,
            Verdict verdict, Optional<PinName> swappedWith) {
        public Line {
            cues = List.copyOf(cues);
        }

        /** The line of the list to walk: {@code M1 7: 7.40 ohm, expected 9.40 to 10.64 ohm: too low; probably swapped with M1 8}. */
        public String text() {
            StringBuilder text = new StringBuilder(module).append(' ').append(pin);
            if (!cues.isEmpty()) {
                text.append(" (cue ").append(cues.get(0).number()).append(", ").append(cues.get(0).label()).append(" at ")
                        .append(cues.get(0).position()).append(')');
            }
            text.append(": ").append(!measured ? "no reading" : ohm.isPresent() ? ohms(ohm.getAsDouble()) + " ohm" : "open");
            expected.ifPresent(e -> text.append(", expected ").append(ohms(e.loopMinOhm())).append(" to ").append(ohms(e.loopMaxOhm()))
                    .append(" ohm"));
            text.append(": ").append(verdict.words());
            swappedWith.ifPresent(other -> text.append("; probably swapped with ").append(other.module()).append(' ').append(other.pin()));
            return text.toString();
        }

        private static String ohms(double value) {
            return String.format(Locale.ROOT, "%.2f", value);
        }
    }

    /** A pin by name. */
    public record PinName(String module, int pin) {
    }

    /** The pins to walk to: all that are not right. */
    public List<Line> toWalk() {
        return lines.stream().filter(line -> line.verdict() != Verdict.RIGHT).toList();
    }

    /** Whether every pin was measured and is right. */
    public boolean allRight() {
        return toWalk().isEmpty();
    }

    /** Holds readings against a plan. A module may be called by its name or by its address. */
    public static MeterCheck of(Plan plan, List<Reading> readings) {
        Map<String, String> names = new LinkedHashMap<>();
        plan.script().modules().forEach(module -> names.putIfAbsent(module.address(), module.name()));
        plan.script().modules().forEach(module -> names.put(module.name(), module.name()));
        Map<PinName, List<PlannedCue>> cues = new LinkedHashMap<>();
        plan.cues().forEach(cue -> cue.pin().ifPresent(pin -> cues.computeIfAbsent(new PinName(pin.module(), pin.pin()), p -> new ArrayList<>())
                .add(cue)));
        Map<PinName, Reading> measured = new LinkedHashMap<>();
        readings.forEach(reading -> measured.put(new PinName(names.getOrDefault(reading.module(), reading.module()), reading.pin()), reading));
        List<PinName> pins = new ArrayList<>(cues.keySet());
        measured.keySet().stream().filter(pin -> !cues.containsKey(pin)).forEach(pins::add);
        List<String> order = plan.script().modules().stream().map(Module::name).toList();
        pins.sort(Comparator.comparingInt((PinName pin) -> order.contains(pin.module()) ? order.indexOf(pin.module()) : order.size())
                .thenComparing(PinName::module).thenComparingInt(PinName::pin));
        List<Line> lines = new ArrayList<>();
        for (PinName pin : pins) {
            lines.add(line(pin, cues.getOrDefault(pin, List.of()), Optional.ofNullable(measured.get(pin)), names.containsValue(pin.module())));
        }
        return new MeterCheck(swaps(lines));
    }

    private static Line line(PinName pin, List<PlannedCue> cues, Optional<Reading> reading, boolean moduleExists) {
        Optional<Circuit> circuit = cues.stream().findFirst().flatMap(PlannedCue::circuit);
        OptionalDouble ohm = reading.map(Reading::ohm).orElse(OptionalDouble.empty());
        return new Line(pin.module(), pin.pin(), cues, circuit, reading.isPresent(), ohm,
                verdict(cues, circuit, reading.isPresent(), ohm, moduleExists), Optional.empty());
    }

    private static Verdict verdict(List<PlannedCue> cues, Optional<Circuit> circuit, boolean measured, OptionalDouble ohm, boolean moduleExists) {
        if (!moduleExists) {
            return Verdict.NO_SUCH_PIN;
        }
        if (cues.isEmpty()) {
            return ohm.isPresent() ? Verdict.NOT_WIRED : Verdict.RIGHT;
        }
        if (!measured) {
            return Verdict.NOT_MEASURED;
        }
        if (ohm.isEmpty()) {
            return Verdict.OPEN;
        }
        if (circuit.isEmpty()) {
            return Verdict.NOT_KNOWN;
        }
        double value = ohm.getAsDouble();
        if (within(value, circuit.get())) {
            return Verdict.RIGHT;
        }
        if (value < circuit.get().loopMinOhm()) {
            return value < SHORT_SHARE * circuit.get().loopMinOhm() ? Verdict.SHORT : Verdict.LOW;
        }
        return value > OPEN_MULTIPLE * circuit.get().loopMaxOhm() ? Verdict.OPEN : Verdict.HIGH;
    }

    /** Meters show two decimals at best: the band is widened by half of the last one. */
    private static boolean within(double ohm, Circuit circuit) {
        return ohm >= circuit.loopMinOhm() - 0.005 && ohm <= circuit.loopMaxOhm() + 0.005;
    }

    /** Pairs of wrong pins whose readings fit each other, pins of one module first, the nearest first; each pin in one pair at most. */
    private static List<Line> swaps(List<Line> lines) {
        List<Line> paired = new ArrayList<>(lines);
        List<Integer> wrong = IntStream.range(0, lines.size()).filter(i -> lines.get(i).verdict().wrong()).boxed().toList();
        for (boolean sameModule : new boolean[] {true, false}) {
            for (int i : wrong) {
                int partner = -1;
                for (int k : wrong) {
                    boolean candidate = k != i && paired.get(k).module().equals(paired.get(i).module()) == sameModule
                            && exchanged(paired.get(i), paired.get(k));
                    if (candidate && (partner < 0 || distance(paired, i, k) < distance(paired, i, partner))) {
                        partner = k;
                    }
                }
                if (partner >= 0) {
                    Line a = paired.get(i);
                    Line b = paired.get(partner);
                    paired.set(i, with(a, b));
                    paired.set(partner, with(b, a));
                }
            }
        }
        return paired;
    }

    private static int distance(List<Line> lines, int a, int b) {
        return lines.get(a).module().equals(lines.get(b).module()) ? Math.abs(lines.get(a).pin() - lines.get(b).pin()) : Math.abs(a - b);
    }

    private static boolean exchanged(Line a, Line b) {
        return a.swappedWith().isEmpty() && b.swappedWith().isEmpty() && fits(a, b) && fits(b, a);
    }

    /** Whether the reading of one pin is what the other should show: its band, or nothing at a pin without a cue. */
    private static boolean fits(Line reading, Line pin) {
        if (pin.cues().isEmpty()) {
            return reading.ohm().isEmpty();
        }
        return reading.ohm().isPresent() && pin.expected().filter(circuit -> within(reading.ohm().getAsDouble(), circuit)).isPresent();
    }

    private static Line with(Line line, Line other) {
        return new Line(line.module(), line.pin(), line.cues(), line.expected(), line.measured(), line.ohm(), line.verdict(),
                Optional.of(new PinName(other.module(), other.pin())));
    }
}
