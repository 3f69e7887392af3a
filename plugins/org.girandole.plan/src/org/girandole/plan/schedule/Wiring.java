package org.girandole.plan.schedule;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.IntStream;
import org.girandole.plan.PlannedCue.Circuit;
import org.girandole.plan.PlannedCue.Tube;
import org.girandole.plan.allocate.Allocation;
import org.girandole.plan.allocate.Field;
import org.girandole.plan.allocate.FieldAllocator;
import org.girandole.plan.allocate.Memory;
import org.girandole.plan.allocate.Parts;
import org.girandole.plan.allocate.Request;
import org.girandole.plan.circuit.Circuits;
import org.girandole.plan.circuit.Load;
import org.girandole.plan.schedule.WiringMemory.Part;
import org.girandole.plan.schedule.WiringMemory.Wired;
import org.girandole.plan.schedule.WiringMemory.Wish;
import org.girandole.plan.script.ShowScript;

/** Pins, tubes and circuits of a show. Parts of the field that share nothing are wired side by side. */
final class Wiring {
    private final ShowScript script;
    private final Memory lock;
    private final Field field;
    private final Circuits circuits;

    Wiring(ShowScript script, Memory lock) {
        this.script = script;
        this.lock = lock;
        this.field = new Field(script);
        this.circuits = new Circuits(script, field);
    }

    /** What each firing gets, in the order of the wishes. */
    List<Wired> of(List<Wish> wishes, WiringMemory earlier) {
        Map<List<Wish>, Part> known = earlier.of(script, lock);
        List<List<Integer>> numbers = Parts.of(field, wishes.stream().map(Wish::request).toList());
        List<Part> parts = numbers.parallelStream().map(part -> part.stream().map(wishes::get).toList())
                .map(wanted -> Optional.ofNullable(known.get(wanted)).orElseGet(() -> new Part(wanted, wired(wanted)))).toList();
        earlier.keep(parts);
        List<Wired> all = new ArrayList<>(Collections.nCopies(wishes.size(), null));
        for (int p = 0; p < parts.size(); p++) {
            for (int i = 0; i < numbers.get(p).size(); i++) {
                all.set(numbers.get(p).get(i), parts.get(p).wired().get(i));
            }
        }
        return all;
    }

    private List<Wired> wired(List<Wish> part) {
        List<Request> requests = part.stream().map(Wish::request).toList();
        Allocation allocation = new FieldAllocator(lock).allocate(field, requests);
        Map<String, Circuit> solved = circuits.of(part.stream().flatMap(wish -> load(wish, allocation).stream()).toList());
        return IntStream.range(0, part.size()).mapToObj(i -> requests.get(i).key())
                .map(key -> new Wired(allocation.pin(key), allocation.tube(key), Optional.ofNullable(solved.get(key)))).toList();
    }

    private static Optional<Load> load(Wish wish, Allocation allocation) {
        Request request = wish.request();
        return allocation.pin(request.key()).map(pin -> new Load(request.key(), request.slot(), request.fireUs(), pin, request.position(),
                allocation.tube(request.key()).map(Tube::rack), wish.igniter()));
    }
}
