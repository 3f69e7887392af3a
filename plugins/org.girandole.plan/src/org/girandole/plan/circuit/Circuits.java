package org.girandole.plan.circuit;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.stream.IntStream;
import org.girandole.physics.Band;
import org.girandole.physics.Derivation;
import org.girandole.physics.PhysicsInputException;
import org.girandole.physics.circuit.Branch;
import org.girandole.physics.circuit.Conductor;
import org.girandole.physics.circuit.Join;
import org.girandole.physics.circuit.Lead;
import org.girandole.physics.circuit.LoopResult;
import org.girandole.physics.circuit.SharedSource;
import org.girandole.physics.circuit.Source;
import org.girandole.physics.circuit.Strands;
import org.girandole.plan.PlannedCue.Circuit;
import org.girandole.plan.allocate.Field;
import org.girandole.plan.script.FiringSystem;
import org.girandole.plan.script.Igniter;
import org.girandole.plan.script.ModuleType;
import org.girandole.plan.script.ShowScript;
import org.girandole.plan.script.Site;
import org.girandole.plan.script.Wire;

/**
 * The circuits of a show. Pins that one module fires at the same moment share its supply. A pin whose wire, igniter or drive the script
 * does not describe has no circuit: nothing is guessed.
 */
public final class Circuits {
    /** How far the resistance of a lead may be off, for it is laid by hand along a straight line on paper. Common practice, no source. */
    public static final double LEAD_TOLERANCE = 0.05;
    /** Copper without a temperature of its own has that of the air, and without that the temperature at which tables state resistance. */
    private static final double TABLE_C = 20;

    private final Field field;
    private final Map<String, Igniter> igniters = new LinkedHashMap<>();
    private final Optional<Conductor> conductor;
    private final double copperC;
    private final Join join;

    /** A pin of a module. */
    private record PinName(String module, int pin) implements Comparable<PinName> {
        @Override
        public int compareTo(PinName other) {
            int byModule = module.compareTo(other.module);
            return byModule != 0 ? byModule : Integer.compare(pin, other.pin);
        }
    }

    /** Pins of one module that are fired at the same moment. */
    private record Salvo(String module, int slot, long fireUs) {
    }

    /** A pin's circuit with its solution, and the number of its branch among those of its supply. */
    private record Solved(SharedSource supply, int number, LoopResult result) {
    }

    public Circuits(ShowScript script, Field field) {
        this.field = field;
        script.igniters().forEach(igniter -> igniters.putIfAbsent(igniter.name(), igniter));
        this.conductor = script.firingSystem().flatMap(FiringSystem::wire)
                .flatMap(name -> script.wires().stream().filter(wire -> wire.name().equals(name)).findFirst())
                .flatMap(Circuits::conductor);
        this.copperC = script.firingSystem().flatMap(FiringSystem::copperC).or(() -> script.site().flatMap(Site::airC))
                .orElse(TABLE_C);
        this.join = script.firingSystem().map(FiringSystem::join).orElse(FiringSystem.Join.SERIES)
                == FiringSystem.Join.SERIES ? Join.SERIES : Join.PARALLEL;
    }

    private static Optional<Conductor> conductor(Wire wire) {
        try {
            return wire.awg().map(Conductor::awg)
                    .or(() -> wire.areaMm2().map(area -> Conductor.crossSection(area, strands(wire), false)));
        } catch (PhysicsInputException e) {
            return Optional.empty();
        }
    }

    private static Strands strands(Wire wire) {
        return switch (wire.iecClass()) {
            case 1 -> Strands.SOLID;
            case 5 -> Strands.FLEXIBLE;
            default -> Strands.STRANDED;
        };
    }

    /** The circuit of each load by cue key, where the script says enough. */
    public Map<String, Circuit> of(List<Load> loads) {
        Map<String, Circuit> circuits = new LinkedHashMap<>();
        solve(loads).forEach((key, solved) -> circuits.put(key, circuit(solved.supply().branches().get(solved.number()), solved.result())));
        return circuits;
    }

    /** How the circuit of each load comes about, by cue key, where the script says enough. */
    public Map<String, Derivation> derivations(List<Load> loads) {
        Map<String, Derivation> derivations = new LinkedHashMap<>();
        solve(loads).forEach((key, solved) -> derivations.put(key, solved.supply().derivation(solved.number())));
        return derivations;
    }

    private Map<String, Solved> solve(List<Load> loads) {
        Map<PinName, List<Load>> byPin = new TreeMap<>();
        loads.forEach(load -> byPin.computeIfAbsent(new PinName(load.pin().module(), load.pin().pin()), p -> new ArrayList<>())
                .add(load));
        Map<PinName, Branch> branches = new LinkedHashMap<>();
        Map<Salvo, List<PinName>> salvos = new LinkedHashMap<>();
        byPin.forEach((pin, onPin) -> branch(onPin).ifPresent(branch -> {
            branches.put(pin, branch);
            Load first = onPin.get(0);
            salvos.computeIfAbsent(new Salvo(pin.module(), first.slot(), first.fireUs()), s -> new ArrayList<>()).add(pin);
        }));
        Map<String, Solved> solved = new LinkedHashMap<>();
        salvos.forEach((salvo, pins) -> solve(salvo.module(), pins.stream().map(branches::get).toList()).ifPresent(results -> {
            for (int i = 0; i < pins.size(); i++) {
                Solved pin = results.get(i);
                byPin.get(pins.get(i)).forEach(load -> solved.put(load.key(), pin));
            }
        }));
        return solved;
    }

    /** Lead and igniters of one pin; empty when wire or igniters are not described. */
    private Optional<Branch> branch(List<Load> onPin) {
        List<Band> ohms = new ArrayList<>();
        double longestM = 0;
        for (Load load : onPin) {
            Optional<Igniter> igniter = load.igniter().map(igniters::get);
            Optional<Field.Stand> stand = field.module(load.pin().module());
            if (igniter.isEmpty() || igniter.get().resistanceOhm().isEmpty() || stand.isEmpty() || conductor.isEmpty()) {
                return Optional.empty();
            }
            double ohm = igniter.get().resistanceOhm().get();
            double plusMinus = igniter.get().resistancePlusMinusOhm().orElse(0.0);
            if (!(ohm > plusMinus) || plusMinus < 0) {
                return Optional.empty();
            }
            ohms.add(Band.plusMinus(ohm, plusMinus));
            longestM = Math.max(longestM, field.leadM(stand.get(), load.position(), load.rack().flatMap(field::rack)));
        }
        return Optional.of(new Branch(0, new Lead(conductor.get(), longestM, copperC, LEAD_TOLERANCE), ohms, join));
    }

    private Optional<List<Solved>> solve(String module, List<Branch> branches) {
        ModuleType type = field.module(module).orElseThrow().type();
        if (type.driveV().isEmpty() || type.sourceOhm().isEmpty()) {
            return Optional.empty();
        }
        try {
            SharedSource supply = new SharedSource(new Source(type.driveV().get(), type.sourceOhm().get()), branches);
            List<LoopResult> results = supply.solve();
            return Optional.of(IntStream.range(0, results.size()).mapToObj(i -> new Solved(supply, i, results.get(i))).toList());
        } catch (PhysicsInputException e) {
            return Optional.empty();
        }
    }

    private static Circuit circuit(Branch branch, LoopResult result) {
        double weakest = result.igniterA().stream().mapToDouble(Band::nominal).min().orElseThrow();
        return new Circuit(branch.igniterOhm().size(), branch.lead().runM(), result.readingOhm().nominal(),
                result.readingOhm().least(), result.readingOhm().most(), weakest, result.weakestA().least());
    }
}
