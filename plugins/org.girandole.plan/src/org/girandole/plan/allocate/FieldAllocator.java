package org.girandole.plan.allocate;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;

/**
 * The allocation that shows get. Hard limits come first: what is written by hand, calibre and tilt, tubes in a row, positions served, pins at
 * once and the gap between pins. Then what is remembered stays, then as few modules as possible, then the shortest leads.
 */
public final class FieldAllocator implements Allocator {
    private final Memory memory;

    /** A fresh allocation. */
    public FieldAllocator() {
        this(Memory.NONE);
    }

    /** An allocation that changes as little as possible of what is remembered. */
    public FieldAllocator(Memory memory) {
        this.memory = memory;
    }

    @Override
    public Allocation allocate(Field field, List<Request> requests) {
        TubePlanner tubes = new TubePlanner(field);
        tubes.allocate(requests, memory);
        PinPlanner pins = new PinPlanner(field, tubes.tubes());
        pins.allocate(requests, memory);
        List<Allocation.Refusal> refusals = new ArrayList<>();
        tubes.refused().forEach(request -> refusals.add(Refusals.tube(field, request)));
        Map<String, Integer> used = pins.usedPins();
        pins.refused().forEach(request -> refusals.add(Refusals.pin(field, request, used)));
        return new Allocation(pins.pins(), tubes.tubes(), refusals);
    }
}
