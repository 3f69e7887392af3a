package org.girandole.plan.schedule;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Random;
import org.girandole.plan.PlannedCue.Aim;
import org.girandole.plan.PlannedCue.Circuit;
import org.girandole.plan.PlannedCue.Tube;
import org.girandole.plan.Show;
import org.girandole.plan.allocate.Allocation;
import org.girandole.plan.allocate.Field;
import org.girandole.plan.allocate.FieldAllocator;
import org.girandole.plan.allocate.Memory;
import org.girandole.plan.allocate.Request;
import org.girandole.plan.circuit.Circuits;
import org.girandole.plan.circuit.Load;
import org.girandole.plan.schedule.WiringMemory.Wired;
import org.girandole.plan.schedule.WiringMemory.Wish;
import org.girandole.plan.script.FiringSystem;
import org.girandole.plan.script.Igniter;
import org.girandole.plan.script.ScoreItem.Lean;
import org.girandole.plan.script.ScoreItem.PinRef;
import org.girandole.plan.script.ScoreItem.TubeRef;
import org.girandole.plan.script.ShowScript;
import org.girandole.plan.script.Wire;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Wiring part by part, with and without memory, against the allocation and the circuits of the whole field. */
class WiringTest {
    private static final String[] PLACES = {"A", "B", "C", "D", "E"};

    private final WiringMemory memory = new WiringMemory();

    @ParameterizedTest
    @ValueSource(ints = {1, 2, 3, 4, 5, 6})
    void partsAndMemoryGiveWhatTheWholeFieldGives(int seed) {
        Random random = new Random(seed);
        for (int i = 0; i < 20; i++) {
            Show show = field(random);
            List<Wish> wishes = new ArrayList<>();
            for (int k = 0; k < 12; k++) {
                wishes.add(wish("k" + k, random));
            }
            Memory lock = Memory.NONE;
            for (int edit = 0; edit < 12; edit++) {
                int changed = random.nextInt(wishes.size());
                switch (random.nextInt(6)) {
                    case 0 -> wishes.add(wish("n" + edit, random));
                    case 1 -> wishes.remove(changed);
                    case 2 -> show.module("N" + edit, 2, PLACES[random.nextInt(5)], PLACES[random.nextInt(5)]);
                    case 3 -> show.airC = Optional.of(random.nextDouble() * 30);
                    default -> wishes.set(changed, wish(wishes.get(changed).request().key(), random));
                }
                ShowScript script = show.script();
                Allocation whole = new FieldAllocator(lock).allocate(new Field(script), wishes.stream().map(Wish::request).toList());
                Map<String, Circuit> circuits = new Circuits(script, new Field(script)).of(loads(wishes, whole));
                List<Wired> expected = wishes.stream().map(wish -> wish.request().key())
                        .map(key -> new Wired(whole.pin(key), whole.tube(key), Optional.ofNullable(circuits.get(key)))).toList();
                assertThat(new Wiring(script, lock).of(wishes, memory)).as("seed %d, show %d, edit %d", seed, i, edit).isEqualTo(expected);
                lock = random.nextInt(4) == 0 ? new Memory(whole.pins(), whole.tubes()) : lock;
            }
        }
    }

    @Test
    void aPartThatDidNotChangeIsNotWiredAgain() {
        Show show = described().module("M", 4, "A").module("N", 4, "B");
        List<Wish> wishes = new ArrayList<>(List.of(wish("a", "A", 0), wish("b", "B", 0)));
        List<Wired> before = new Wiring(show.script(), Memory.NONE).of(wishes, memory);
        wishes.set(1, wish("b", "B", 1_000_000));
        List<Wired> after = new Wiring(show.script(), Memory.NONE).of(wishes, memory);
        assertThat(after.get(0)).isSameAs(before.get(0));
        assertThat(after.get(1)).isNotSameAs(before.get(1)).isEqualTo(before.get(1));
        assertThat(before.get(0).circuit()).isPresent();
        show.airC = Optional.of(35.0);
        assertThat(new Wiring(show.script(), Memory.NONE).of(wishes, memory).get(0).circuit()).isPresent().isNotEqualTo(before.get(0).circuit());
    }

    private static Show field(Random random) {
        Show show = described();
        for (int m = 0; m < 3 + random.nextInt(3); m++) {
            String place = PLACES[random.nextInt(5)];
            show.module("M" + m, 2 + random.nextInt(4), random.nextBoolean() ? new String[] {place}
                    : new String[] {place, PLACES[random.nextInt(5)]});
        }
        for (int r = 0; r < 3; r++) {
            show.rack("R" + r, PLACES[random.nextInt(5)], 3, 0.075);
        }
        return show;
    }

    /** With wire and igniter, so that there are circuits; the copper has the temperature of the air. */
    private static Show described() {
        Show show = new Show();
        show.wires.add(new Wire("Pair", Optional.of(20), Optional.empty(), 2, Show.at(4)));
        show.igniters.add(new Igniter("Standard", Optional.of(1.6), Optional.of(0.2), Optional.of(0.5), Optional.of(0.2), Show.at(4)));
        show.system = Optional.of(new FiringSystem("Field", Optional.of(10_000L), Optional.of(0L), Optional.empty(), Optional.of("Pair"), 2, 0,
                Optional.empty(), FiringSystem.Join.SERIES, 1.5, Show.at(4)));
        return show;
    }

    private static Wish wish(String key, Random random) {
        Optional<PinRef> pin = random.nextInt(6) == 0 ? Optional.of(new PinRef("M" + random.nextInt(5), 1 + random.nextInt(4), Show.at(7)))
                : Optional.empty();
        Optional<TubeRef> tube = random.nextInt(6) == 0 ? Optional.of(new TubeRef("R" + random.nextInt(4), 1 + random.nextInt(3), Show.at(7)))
                : Optional.empty();
        return new Wish(new Request(key, 0, 10_000L * random.nextInt(4), PLACES[random.nextInt(5)], "Peony", random.nextInt(4) > 0,
                Optional.of(0.075), 1 + random.nextInt(2), new Aim(0, Lean.SIDE, 0), pin, tube), Optional.of("Standard"));
    }

    private static Wish wish(String key, String position, long fireUs) {
        return new Wish(new Request(key, 0, fireUs, position, "Peony", false, Optional.empty(), 1, new Aim(0, Lean.SIDE, 0),
                Optional.empty(), Optional.empty()), Optional.of("Standard"));
    }

    private static List<Load> loads(List<Wish> wishes, Allocation allocation) {
        List<Load> loads = new ArrayList<>();
        for (Wish wish : wishes) {
            Request request = wish.request();
            allocation.pin(request.key()).ifPresent(pin -> loads.add(new Load(request.key(), request.slot(), request.fireUs(), pin,
                    request.position(), allocation.tube(request.key()).map(Tube::rack), wish.igniter())));
        }
        return loads;
    }
}
