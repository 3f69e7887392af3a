package org.girandole.plan.allocate;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;
import org.girandole.plan.PlannedCue.Pin;
import org.girandole.plan.PlannedCue.Tube;
import org.girandole.plan.script.Rack;
import org.girandole.plan.script.ScoreItem.PinRef;
import org.girandole.plan.script.ScoreItem.TubeRef;

/**
 * Takes the first tube and the first pin that fit, request by request. Chains come before single pieces, because they need tubes in a row; a
 * rack that would mix both, a module not yet in use and a farther module are taken only when nothing else is left.
 */
public final class FirstFit implements Allocator {
    @Override
    public Allocation allocate(Field field, List<Request> requests) {
        return new Run(field).allocate(requests);
    }

    private static final class Run {
        private final Field field;
        private final Map<String, PinBook> pinBooks = new LinkedHashMap<>();
        private final Map<String, TubeBook> tubeBooks = new HashMap<>();
        private final Map<String, Pin> pins = new LinkedHashMap<>();
        private final Map<String, Tube> tubes = new LinkedHashMap<>();
        private final List<Allocation.Refusal> refusals = new ArrayList<>();

        Run(Field field) {
            this.field = field;
            field.modules().forEach(stand -> pinBooks.put(stand.name(), new PinBook(stand)));
        }

        Allocation allocate(List<Request> requests) {
            requests.forEach(this::takeByHand);
            requests.stream()
                    .filter(request -> request.needsTube() && request.tube().isEmpty())
                    .sorted(Comparator.comparingInt(Request::pieces).reversed())
                    .forEach(this::allocateTube);
            requests.stream().filter(request -> request.pin().isEmpty()).forEach(this::allocatePin);
            return new Allocation(pins, tubes, refusals);
        }

        private void takeByHand(Request request) {
            if (request.pin().isPresent()) {
                PinRef hand = request.pin().get();
                pins.put(request.key(), new Pin(hand.module(), hand.pin(), true));
                Optional.ofNullable(pinBooks.get(hand.module()))
                        .ifPresent(book -> book.take(hand.pin(), request.slot(), request.fireUs()));
            }
            if (request.tube().isPresent()) {
                TubeRef hand = request.tube().get();
                tubes.put(request.key(), new Tube(hand.rack(), hand.tube(), true));
                field.rack(hand.rack()).ifPresent(rack -> book(rack).take(request, hand.tube()));
            }
        }

        private void allocateTube(Request request) {
            List<TubeBook> racks = field.racksAt(request.position()).stream().map(this::book).toList();
            boolean chain = request.pieces() > 1;
            Optional<TubeBook> book = Stream.concat(racks.stream().filter(b -> !b.wouldMix(chain)), racks.stream())
                    .filter(b -> b.place(request).isPresent())
                    .findFirst();
            if (book.isEmpty()) {
                refusals.add(Refusals.tube(field, request));
                return;
            }
            int first = book.get().place(request).orElseThrow();
            book.get().take(request, first);
            tubes.put(request.key(), new Tube(book.get().rack().name(), first, false));
        }

        private TubeBook book(Rack rack) {
            return tubeBooks.computeIfAbsent(rack.name(), name -> new TubeBook(rack));
        }

        private void allocatePin(Request request) {
            Optional<Rack> rack = Optional.ofNullable(tubes.get(request.key())).map(Tube::rack).flatMap(field::rack);
            Optional<PinBook> best = field.modulesAt(request.position()).stream()
                    .map(stand -> pinBooks.get(stand.name()))
                    .filter(PinBook::hasRoom)
                    .min(Comparator.comparing((PinBook book) -> !book.inTime(request.slot(), request.fireUs()))
                            .thenComparing(book -> !book.used())
                            .thenComparing(book -> field.leadM(book.stand(), request.position(), rack)));
            if (best.isEmpty()) {
                refusals.add(Refusals.pin(field, request));
                return;
            }
            int pin = best.get().nextFree();
            best.get().take(pin, request.slot(), request.fireUs());
            pins.put(request.key(), new Pin(best.get().stand().name(), pin, false));
        }
    }
}
