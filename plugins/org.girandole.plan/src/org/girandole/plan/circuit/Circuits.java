package org.girandole.plan.circuit;

import java.util.ArrayList;
import java.util.Collection;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.concurrent.ConcurrentHashMap;
import java.util.function.BiConsumer;
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

    /** Equal circuits are solved once: most pins of a rack hang on the same lead. */
    private final Map<Supply, List<Solved>> supplies = new ConcurrentHashMap<>();

    /** When a pin is fired. Pins of one module that are fired at the same moment share its supply. */
    private record Moment(int slot, long fireUs) {
    }

    /** Lead and igniters of one pin. */
    private record Strung(double leadM, List<Band> igniterOhm) {
    }

    /** What hangs on one pin. */
    private record Hung(List<Load> loads, Strung strung) {
    }

    /** A supply with all that it fires at once; wire, temperature and joins are the same in all of a show. */
    private record Supply(double driveV, double sourceOhm, List<Strung> pins) {
    }

    /** A pin's circuit, and the number of its branch among those of its supply. */
    private record Solved(SharedSource supply, int number, Circuit circuit) {
    }

    /** The loads on one pin, with its circuit. */
    private record Fed(List<Load> loads, Solved circuit) {
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
        Map<String, Circuit> circuits = new HashMap<>();
        solve(loads, (load, solved) -> circuits.put(load.key(), solved.circuit()));
        return circuits;
    }

    /** How the circuit of each load comes about, by cue key, where the script says enough. */
    public Map<String, Derivation> derivations(List<Load> loads) {
        Map<String, Derivation> derivations = new HashMap<>();
        solve(loads, (load, solved) -> derivations.put(load.key(), solved.supply().derivation(solved.number())));
        return derivations;
    }

    private void solve(List<Load> loads, BiConsumer<Load, Solved> solved) {
        Map<String, SortedMap<Integer, List<Load>>> modules = new LinkedHashMap<>();
        loads.forEach(load -> modules.computeIfAbsent(load.pin().module(), module -> new TreeMap<>())
                .computeIfAbsent(load.pin().pin(), pin -> new ArrayList<>(1)).add(load));
        // No supply feeds two modules, so that these are solved side by side.
        modules.entrySet().parallelStream().map(module -> field.module(module.getKey())
                .map(stand -> solve(stand, module.getValue().values())).orElse(List.of())).toList()
                .forEach(all -> all.forEach(one -> one.loads().forEach(load -> solved.accept(load, one.circuit()))));
    }

    private List<Fed> solve(Field.Stand stand, Collection<List<Load>> pins) {
        Map<Moment, List<Hung>> salvos = new LinkedHashMap<>();
        pins.forEach(onPin -> strung(stand, onPin).ifPresent(strung -> salvos
                .computeIfAbsent(new Moment(onPin.get(0).slot(), onPin.get(0).fireUs()), moment -> new ArrayList<>(1))
                .add(new Hung(onPin, strung))));
        List<Fed> fed = new ArrayList<>();
        salvos.values().forEach(salvo -> solve(stand.type(), salvo, fed));
        return fed;
    }

    private void solve(ModuleType type, List<Hung> salvo, List<Fed> fed) {
        if (type.driveV().isEmpty() || type.sourceOhm().isEmpty()) {
            return;
        }
        List<Solved> results;
        try {
            results = supplies.computeIfAbsent(new Supply(type.driveV().get(), type.sourceOhm().get(),
                    salvo.stream().map(Hung::strung).toList()), this::solved);
        } catch (PhysicsInputException e) {
            return;
        }
        for (int i = 0; i < salvo.size(); i++) {
            fed.add(new Fed(salvo.get(i).loads(), results.get(i)));
        }
    }

    private List<Solved> solved(Supply known) {
        SharedSource supply = new SharedSource(new Source(known.driveV(), known.sourceOhm()), known.pins().stream().map(pin ->
                new Branch(0, new Lead(conductor.orElseThrow(), pin.leadM(), copperC, LEAD_TOLERANCE), pin.igniterOhm(), join)).toList());
        List<LoopResult> results = supply.solve();
        return IntStream.range(0, results.size())
                .mapToObj(i -> new Solved(supply, i, circuit(supply.branches().get(i), results.get(i)))).toList();
    }

    /** Lead and igniters of one pin; empty when wire or igniters are not described. */
    private Optional<Strung> strung(Field.Stand stand, List<Load> onPin) {
        List<Band> ohms = new ArrayList<>();
        double longestM = 0;
        for (Load load : onPin) {
            Optional<Igniter> igniter = load.igniter().map(igniters::get);
            if (igniter.isEmpty() || igniter.get().resistanceOhm().isEmpty() || conductor.isEmpty()) {
                return Optional.empty();
            }
            double ohm = igniter.get().resistanceOhm().get();
            double plusMinus = igniter.get().resistancePlusMinusOhm().orElse(0.0);
            if (!(ohm > plusMinus) || plusMinus < 0) {
                return Optional.empty();
            }
            ohms.add(Band.plusMinus(ohm, plusMinus));
            longestM = Math.max(longestM, field.leadM(stand, load.position(), load.rack().flatMap(field::rack)));
        }
        return Optional.of(new Strung(longestM, ohms));
    }

    private static Circuit circuit(Branch branch, LoopResult result) {
        double weakest = result.igniterA().stream().mapToDouble(Band::nominal).min().orElseThrow();
        return new Circuit(branch.igniterOhm().size(), branch.lead().runM(), result.readingOhm().nominal(),
                result.readingOhm().least(), result.readingOhm().most(), weakest, result.weakestA().least());
    }
}
