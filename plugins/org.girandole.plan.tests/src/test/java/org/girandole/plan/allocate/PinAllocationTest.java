package org.girandole.plan.allocate;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Random;
import java.util.Set;
import org.girandole.plan.PlannedCue.Aim;
import org.girandole.plan.PlannedCue.Pin;
import org.girandole.plan.Show;
import org.girandole.plan.script.Module;
import org.girandole.plan.script.ModuleType;
import org.girandole.plan.script.ScoreItem.Lean;
import org.girandole.plan.script.ScoreItem.PinRef;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Pins, against every possible assignment of small fields. */
class PinAllocationTest {
    private static final String[] PLACES = {"A", "B", "C"};

    private final Show show = new Show();

    @ParameterizedTest
    @ValueSource(ints = {0, 1, 2, 3})
    void smallFieldsWithoutGapsAreSolvedToTheOptimum(int seed) {
        Random random = new Random(seed);
        for (int i = 0; i < 150; i++) {
            Case small = Case.random(random, false);
            Score best = small.best();
            Score found = small.score(new FieldAllocator().allocate(small.field, small.requests).pins());

            assertThat(found.refused).as("refused in %s", small).isEqualTo(best.refused);
            assertThat(found.modules).as("modules in %s", small).isEqualTo(best.modules);
            assertThat(found.leadM).as("lead in %s", small).isCloseTo(best.leadM, within(1e-6));
        }
    }

    @ParameterizedTest
    @ValueSource(ints = {10, 11, 12, 13})
    void smallFieldsWithGapsRefuseNoMoreThanTheyMust(int seed) {
        Random random = new Random(seed);
        for (int i = 0; i < 150; i++) {
            Case small = Case.random(random, true);
            Score best = small.best();
            Score found = small.score(new FieldAllocator().allocate(small.field, small.requests).pins());

            assertThat(found.refused).as("refused in %s", small).isEqualTo(best.refused);
            assertThat(found.modules).as("modules in %s", small).isEqualTo(best.modules);
        }
    }

    @ParameterizedTest
    @ValueSource(ints = {20, 21, 22})
    void aSmallEditChangesNoMoreThanItMust(int seed) {
        Random random = new Random(seed);
        for (int i = 0; i < 150; i++) {
            Case small = Case.random(random, false);
            Map<String, Pin> before = new FieldAllocator().allocate(small.field, small.requests).pins();
            Case edited = small.withOneMore(random);
            Map<String, Pin> after = new FieldAllocator(new Memory(before, Map.of())).allocate(edited.field, edited.requests).pins();

            Score found = edited.score(after);
            assertThat(found.refused).as("refused in %s", edited).isEqualTo(edited.best().refused);
            assertThat(moved(before, after)).as("moved in %s from %s", edited, before).isEqualTo(edited.fewestMoved(before));
        }
    }

    @Test
    void handWrittenPinsAreLawAndNobodyElseGetsThem() {
        show.module("M1", 2, "A");
        List<Request> requests = List.of(request("k1", "A", 0, Optional.empty()), request("k2", "A", 1_000_000,
                Optional.of(new PinRef("M1", 1, Show.at(1)))), request("k3", "A", 2_000_000, Optional.of(new PinRef("M9", 77, Show.at(1)))));

        Allocation allocation = new FieldAllocator().allocate(new Field(show.script()), requests);

        assertThat(allocation.pins()).containsEntry("k1", new Pin("M1", 2, false)).containsEntry("k2", new Pin("M1", 1, true))
                .containsEntry("k3", new Pin("M9", 77, true));
    }

    @Test
    void sparePinsAreLeftFree() {
        show.moduleTypes.add(new ModuleType("T", 3, Optional.empty(), Optional.empty(), Optional.empty(), Optional.empty(), Optional.empty(),
                Optional.empty(), Optional.empty(), Optional.empty(), 1, Show.at(1)));
        show.modules.add(new Module("M1", "1", "T", List.of("A"), Show.at(1)));
        List<Request> requests = List.of(request("k1", "A", 0, Optional.empty()), request("k2", "A", 1, Optional.empty()),
                request("k3", "A", 2, Optional.empty()));

        Allocation allocation = new FieldAllocator().allocate(new Field(show.script()), requests);

        assertThat(allocation.pins().keySet()).containsExactlyInAnyOrder("k1", "k2");
        assertThat(allocation.refusals()).singleElement().satisfies(refusal -> {
            assertThat(refusal.key()).isEqualTo("k3");
            assertThat(refusal.kind()).isEqualTo(Allocation.Kind.PIN);
        });
    }

    @Test
    void pinsAtOnceAndGapsAreKeptByUsingOtherModules() {
        show.module("M1", 8, Optional.of(2), Optional.of(50_000L), "A").module("M2", 8, Optional.of(2), Optional.of(50_000L), "A");
        List<Request> requests = new ArrayList<>();
        for (int i = 0; i < 3; i++) {
            requests.add(request("once" + i, "A", 0, Optional.empty()));
        }
        requests.add(request("close", "A", 1_000_000, Optional.empty()));
        requests.add(request("closer", "A", 1_020_000, Optional.empty()));

        Allocation allocation = new FieldAllocator().allocate(new Field(show.script()), requests);

        assertThat(allocation.refusals()).isEmpty();
        assertThat(allocation.pins().get("close").module()).isNotEqualTo(allocation.pins().get("closer").module());
    }

    @Test
    void whatNoModuleMayFireInTimeIsRefusedWithTheReason() {
        show.module("M1", 8, Optional.of(1), Optional.empty(), "A");

        Allocation allocation = new FieldAllocator().allocate(new Field(show.script()), List.of(request("k1", "A", 30_000_000, Optional.empty()),
                request("k2", "A", 30_000_000, Optional.empty())));

        assertThat(allocation.refusals()).singleElement()
                .satisfies(refusal -> assertThat(refusal.limit()).contains("none may fire another at 0:30.000"));
    }

    @Test
    void rememberedPinsStayWhenCuesComeAndGo() {
        show.module("M1", 8, "A").module("M2", 8, "A");
        List<Request> before = new ArrayList<>();
        for (int i = 0; i < 7; i++) {
            before.add(request("k" + i, "A", i * 1_000_000L, Optional.empty()));
        }
        Map<String, Pin> pins = new FieldAllocator().allocate(new Field(show.script()), before).pins();
        List<Request> after = new ArrayList<>(before);
        after.remove(3);
        after.add(0, request("new", "A", 500_000, Optional.empty()));

        Map<String, Pin> now = new FieldAllocator(new Memory(pins, Map.of())).allocate(new Field(show.script()), after).pins();

        after.stream().filter(request -> !request.key().equals("new"))
                .forEach(request -> assertThat(now.get(request.key())).isEqualTo(pins.get(request.key())));
        // the pin that became free is taken again, no further module is opened
        assertThat(now.get("new")).isEqualTo(pins.get("k3"));
    }

    private static Request request(String key, String position, long fireUs, Optional<PinRef> pin) {
        return new Request(key, 0, fireUs, position, "Peony", false, Optional.empty(), 1, new Aim(0, Lean.SIDE, 0), pin, Optional.empty());
    }

    private static long moved(Map<String, Pin> before, Map<String, Pin> after) {
        return before.entrySet().stream().filter(entry -> !entry.getValue().equals(after.get(entry.getKey()))).count();
    }

    /** What an assignment costs, in the order of importance. */
    private record Score(int refused, int modules, double leadM) {
        boolean betterThan(Score other) {
            if (other == null || refused != other.refused) {
                return other == null || refused < other.refused;
            }
            return modules != other.modules ? modules < other.modules : leadM < other.leadM - 1e-9;
        }
    }

    /** A small field with its requests. */
    private static final class Case {
        private final Show show = new Show();
        private final List<Request> requests = new ArrayList<>();
        private Field field;

        static Case random(Random random, boolean gaps) {
            Case small = new Case();
            int modules = 2 + random.nextInt(3);
            for (int m = 0; m < modules; m++) {
                Set<String> serves = new HashSet<>();
                List<String> order = new ArrayList<>();
                for (int k = 0; k <= random.nextInt(3); k++) {
                    String place = PLACES[random.nextInt(3)];
                    if (serves.add(place)) {
                        order.add(place);
                    }
                }
                small.show.module("M" + m, 1 + random.nextInt(3), random.nextBoolean() ? Optional.of(1 + random.nextInt(2)) : Optional.empty(),
                        gaps ? Optional.of(20_000L) : Optional.empty(), order.toArray(new String[0]));
            }
            int demands = 1 + random.nextInt(6);
            for (int d = 0; d < demands; d++) {
                small.requests.add(small.request("k" + d, random));
            }
            small.field = new Field(small.show.script());
            return small;
        }

        private Request request(String key, Random random) {
            return PinAllocationTest.request(key, PLACES[random.nextInt(3)], 10_000L * random.nextInt(4), Optional.empty());
        }

        Case withOneMore(Random random) {
            Case more = new Case();
            more.show.moduleTypes.addAll(show.moduleTypes);
            more.show.modules.addAll(show.modules);
            more.requests.addAll(requests);
            more.requests.add(request("more", random));
            more.field = field;
            return more;
        }

        Score score(Map<String, Pin> pins) {
            int[] choice = new int[requests.size()];
            Set<Pin> distinct = new HashSet<>();
            for (int d = 0; d < choice.length; d++) {
                Pin pin = pins.get(requests.get(d).key());
                choice[d] = pin == null ? -1 : index(pin.module());
                assertThat(pin == null || distinct.add(pin)).as("pin given twice").isTrue();
            }
            assertThat(allowed(choice)).as("limits of %s in %s", pins, this).isTrue();
            return score(choice);
        }

        private int index(String module) {
            return field.modules().stream().map(Field.Stand::name).toList().indexOf(module);
        }

        private Score score(int[] choice) {
            int refused = 0;
            double lead = 0;
            Set<Integer> used = new HashSet<>();
            for (int d = 0; d < choice.length; d++) {
                if (choice[d] < 0) {
                    refused++;
                } else {
                    used.add(choice[d]);
                    lead += field.leadM(field.modules().get(choice[d]), requests.get(d).position(), Optional.empty());
                }
            }
            return new Score(refused, used.size(), lead);
        }

        Score best() {
            Score[] best = new Score[1];
            each(new int[requests.size()], 0, choice -> {
                Score score = score(choice);
                best[0] = score.betterThan(best[0]) ? score : best[0];
            });
            return best[0];
        }

        /** The fewest firings that leave their module, among assignments that refuse the fewest. */
        long fewestMoved(Map<String, Pin> before) {
            Map<Integer, Long> fewest = new HashMap<>();
            each(new int[requests.size()], 0, choice -> {
                long moved = 0;
                for (int d = 0; d < choice.length; d++) {
                    Pin was = before.get(requests.get(d).key());
                    moved += was != null && choice[d] != index(was.module()) ? 1 : 0;
                }
                fewest.merge(score(choice).refused, moved, Math::min);
            });
            return fewest.get(fewest.keySet().stream().mapToInt(Integer::intValue).min().orElseThrow());
        }

        private void each(int[] choice, int next, java.util.function.Consumer<int[]> visitor) {
            if (next == choice.length) {
                if (allowed(choice)) {
                    visitor.accept(choice);
                }
                return;
            }
            for (int m = -1; m < field.modules().size(); m++) {
                choice[next] = m;
                each(choice, next + 1, visitor);
            }
        }

        /** The limits, written down independently of the allocation. */
        private boolean allowed(int[] choice) {
            Map<Integer, Map<Long, Integer>> times = new LinkedHashMap<>();
            for (int d = 0; d < choice.length; d++) {
                if (choice[d] >= 0) {
                    if (!field.modules().get(choice[d]).module().positions().contains(requests.get(d).position())) {
                        return false;
                    }
                    times.computeIfAbsent(choice[d], m -> new HashMap<>()).merge(requests.get(d).fireUs(), 1, Integer::sum);
                }
            }
            for (Map.Entry<Integer, Map<Long, Integer>> entry : times.entrySet()) {
                ModuleType type = field.modules().get(entry.getKey()).type();
                Map<Long, Integer> at = entry.getValue();
                if (at.values().stream().mapToInt(Integer::intValue).sum() > type.pins()
                        || at.values().stream().anyMatch(count -> count > type.pinsAtOnce().orElse(Integer.MAX_VALUE))) {
                    return false;
                }
                for (long a : at.keySet()) {
                    for (long b : at.keySet()) {
                        if (a < b && b - a < type.pinGapUs().orElse(0L)) {
                            return false;
                        }
                    }
                }
            }
            return true;
        }

        @Override
        public String toString() {
            return show.modules + " " + show.moduleTypes + " " + requests.stream().map(r -> r.key() + "@" + r.position() + "/" + r.fireUs()).toList();
        }
    }
}
