package org.girandole.plan.allocate;

import java.util.BitSet;
import java.util.HashMap;
import java.util.Map;
import java.util.NavigableMap;
import java.util.TreeMap;

/** What is on the pins of one module while an allocation is made. */
final class PinBook {
    private final Field.Stand stand;
    private final BitSet taken = new BitSet();
    private final Map<Integer, NavigableMap<Long, Integer>> firingsBySlot = new HashMap<>();
    private int allocated;

    PinBook(Field.Stand stand) {
        this.stand = stand;
    }

    Field.Stand stand() {
        return stand;
    }

    /** Whether a pin may still be given away: spare pins are left free. */
    boolean hasRoom() {
        return allocated < stand.usablePins() && taken.cardinality() < stand.type().pins();
    }

    boolean used() {
        return !taken.isEmpty();
    }

    boolean isFree(int pin) {
        return pin >= 1 && pin <= stand.type().pins() && !taken.get(pin);
    }

    /** Whether a firing at this time would keep within pins at once and the gap between pins. */
    boolean inTime(int slot, long fireUs) {
        NavigableMap<Long, Integer> firings = firingsBySlot.get(slot);
        if (firings == null) {
            return true;
        }
        int atOnce = firings.getOrDefault(fireUs, 0);
        if (stand.type().pinsAtOnce().isPresent() && atOnce >= stand.type().pinsAtOnce().get()) {
            return false;
        }
        long gapUs = stand.type().pinGapUs().orElse(0L);
        Long before = firings.lowerKey(fireUs);
        Long after = firings.higherKey(fireUs);
        return (before == null || fireUs - before >= gapUs) && (after == null || after - fireUs >= gapUs);
    }

    /** The lowest free pin. */
    int nextFree() {
        return taken.nextClearBit(1);
    }

    /** Marks a pin as used by a firing; pins of hand-written cues may be marked more than once, or not exist. */
    void take(int pin, int slot, long fireUs) {
        if (pin >= 1 && !taken.get(pin)) {
            taken.set(pin);
            allocated++;
        }
        firingsBySlot.computeIfAbsent(slot, s -> new TreeMap<>()).merge(fireUs, 1, Integer::sum);
    }
}
