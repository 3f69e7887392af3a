package org.girandole.plan.allocate;

import java.util.BitSet;
import java.util.HashMap;
import java.util.Map;
import java.util.NavigableMap;
import java.util.TreeMap;

/** What is on one module while pins are given away: numbered pins, and firings that will get a number at the end. */
final class ModuleLoad {
    private final Field.Stand stand;
    private final BitSet pins;
    private final Map<Integer, NavigableMap<Long, Integer>> firings;
    private int used;

    ModuleLoad(Field.Stand stand) {
        this(stand, new BitSet(), new HashMap<>(), 0);
    }

    private ModuleLoad(Field.Stand stand, BitSet pins, Map<Integer, NavigableMap<Long, Integer>> firings, int used) {
        this.stand = stand;
        this.pins = pins;
        this.firings = firings;
        this.used = used;
    }

    ModuleLoad copy() {
        Map<Integer, NavigableMap<Long, Integer>> copied = new HashMap<>();
        firings.forEach((slot, times) -> copied.put(slot, new TreeMap<>(times)));
        return new ModuleLoad(stand, (BitSet) pins.clone(), copied, used);
    }

    Field.Stand stand() {
        return stand;
    }

    boolean isUsed() {
        return used > 0;
    }

    /** Pins that may still be given away. */
    int room() {
        return Math.max(0, stand.usablePins() - used);
    }

    boolean hasPin(int pin) {
        return pin >= 1 && pin <= stand.type().pins();
    }

    boolean isFree(int pin) {
        return hasPin(pin) && !pins.get(pin);
    }

    /** Puts a firing on a pin. A second igniter on it is no second firing when both go at the same moment. */
    void fix(int pin, int slot, long fireUs, boolean sharesMoment) {
        if (pin >= 1 && !pins.get(pin)) {
            pins.set(pin);
            used++;
            add(slot, fireUs);
        } else if (!sharesMoment) {
            add(slot, fireUs);
        }
    }

    /** Takes a pin whose number is not yet known. */
    void plan(Request request) {
        used++;
        add(request.slot(), request.fireUs());
    }

    void unplan(Request request) {
        used--;
        firings.get(request.slot()).computeIfPresent(request.fireUs(), (time, count) -> count == 1 ? null : count - 1);
    }

    /** Gives a planned firing its number: the lowest free pin. */
    int number() {
        int pin = pins.nextClearBit(1);
        pins.set(pin);
        return pin;
    }

    /** Gives a planned firing the number it had. */
    void number(int pin) {
        pins.set(pin);
    }

    private void add(int slot, long fireUs) {
        firings.computeIfAbsent(slot, s -> new TreeMap<>()).merge(fireUs, 1, Integer::sum);
    }

    int atOnce(int slot, long fireUs) {
        NavigableMap<Long, Integer> times = firings.get(slot);
        return times == null ? 0 : times.getOrDefault(fireUs, 0);
    }

    /** How many pins may fire at the same moment. */
    int mostAtOnce() {
        return stand.type().pinsAtOnce().orElse(Integer.MAX_VALUE);
    }

    /** Whether a firing at this moment would keep the gap to firings at other moments. */
    boolean keepsGap(int slot, long fireUs) {
        NavigableMap<Long, Integer> times = firings.get(slot);
        long gapUs = stand.type().pinGapUs().orElse(0L);
        if (times == null || gapUs <= 0) {
            return true;
        }
        Long before = times.lowerKey(fireUs);
        Long after = times.higherKey(fireUs);
        return (before == null || fireUs - before >= gapUs) && (after == null || after - fireUs >= gapUs);
    }

    /** Whether a firing would keep all limits on time. */
    boolean inTime(Request request) {
        return atOnce(request.slot(), request.fireUs()) < mostAtOnce() && keepsGap(request.slot(), request.fireUs());
    }
}
