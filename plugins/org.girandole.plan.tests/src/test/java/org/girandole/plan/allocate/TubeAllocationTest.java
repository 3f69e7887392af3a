package org.girandole.plan.allocate;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Random;
import java.util.Set;
import org.girandole.plan.PlannedCue.Aim;
import org.girandole.plan.PlannedCue.Tube;
import org.girandole.plan.Show;
import org.girandole.plan.script.Rack;
import org.girandole.plan.script.ScoreItem.Lean;
import org.girandole.plan.script.ScoreItem.TubeRef;
import org.girandole.plan.script.TiltRange;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Tubes, against every possible loading of small racks. */
class TubeAllocationTest {
    private final Show show = new Show();

    @ParameterizedTest
    @ValueSource(ints = {0, 1, 2})
    void smallRacksAreFilledAsFarAsPossible(int seed) {
        Random random = new Random(seed);
        for (int i = 0; i < 150; i++) {
            Case small = Case.random(random);
            Map<String, Tube> tubes = new FieldAllocator().allocate(small.field(), small.requests).tubes();

            assertThat(small.refused(tubes)).as("refused pieces in %s", small).isEqualTo(small.fewestRefused());
        }
    }

    @ParameterizedTest
    @ValueSource(ints = {10, 11})
    void aSmallEditRefusesNoMoreThanAFreshStart(int seed) {
        Random random = new Random(seed);
        for (int i = 0; i < 150; i++) {
            Case small = Case.random(random);
            Map<String, Tube> before = new FieldAllocator().allocate(small.field(), small.requests).tubes();
            small.requests.add(small.request("more", random));
            Map<String, Tube> after = new FieldAllocator(new Memory(Map.of(), before)).allocate(small.field(), small.requests).tubes();

            assertThat(small.refused(after)).as("refused in %s", small).isEqualTo(small.fewestRefused());
            if (small.couldStay(before)) {
                before.forEach((key, tube) -> assertThat(after.get(key)).as("tube of %s in %s", key, small).isEqualTo(tube));
            }
        }
    }

    @Test
    void theOrderOfCuesFollowsTheRack() {
        show.rack("R1", "A", 5, 0.075);
        List<Request> requests = new ArrayList<>();
        for (int i = 0; i < 5; i++) {
            requests.add(request("k" + i, "A", i, 1, 0.075, i % 2 == 0 ? 0 : 10, Optional.empty()));
        }

        Allocation allocation = new FieldAllocator().allocate(new Field(show.script()), requests);

        for (int i = 0; i < 5; i++) {
            assertThat(allocation.tubes()).containsEntry("k" + i, new Tube("R1", i + 1, false));
        }
    }

    @Test
    void aFixedFanTakesTheNearestTubeWithinItsTolerance() {
        // five tubes at -20, -10, 0, 10, 20 degrees
        show.racks.add(new Rack("F", "A", List.of(new Rack.TubeRun(5, 0.03, Optional.empty(), Show.at(1))), Optional.empty(),
                new TiltRange(-20, 20), true, Optional.empty(), Show.at(1)));

        Allocation allocation = new FieldAllocator().allocate(new Field(show.script()), List.of(
                request("nearly", "A", 0, 1, 0.03, 12, Optional.empty()), request("no", "A", 1, 1, 0.03, 15, Optional.empty())));

        assertThat(allocation.tubes()).containsEntry("nearly", new Tube("F", 4, false)).doesNotContainKey("no");
        assertThat(allocation.refusals()).anySatisfy(refusal -> {
            assertThat(refusal.key()).isEqualTo("no");
            assertThat(refusal.limit()).isEqualTo("No tube of 30 mm at position A can point to 15.0 deg");
        });
    }

    @Test
    void chainsGetRacksOfTheirOwnWherePossible() {
        show.rack("R1", "A", 5, 0.075).rack("R2", "A", 5, 0.075);

        Allocation allocation = new FieldAllocator().allocate(new Field(show.script()), List.of(request("single", "A", 0, 1, 0.075, 0, Optional.empty()),
                request("chain", "A", 1, 4, 0.075, 0, Optional.empty())));

        assertThat(allocation.tubes().get("single").rack()).isNotEqualTo(allocation.tubes().get("chain").rack());
    }

    @Test
    void aChainNeedsNeighbouringTubesOfOneRack() {
        show.rack("R1", "A", 3, 0.075).rack("R2", "A", 3, 0.075);

        Allocation allocation = new FieldAllocator().allocate(new Field(show.script()), List.of(request("chain", "A", 1, 4, 0.075, 0, Optional.empty())));

        assertThat(allocation.tubes()).isEmpty();
        assertThat(allocation.refusals()).anySatisfy(refusal -> assertThat(refusal.remedy()).isEqualTo("add a rack with 4 tubes of 75 mm in a row at A"));
    }

    @Test
    void handWrittenTubesAreLaw() {
        show.rack("R1", "A", 2, 0.075);

        Allocation allocation = new FieldAllocator().allocate(new Field(show.script()), List.of(request("first", "A", 0, 1, 0.075, 0, Optional.empty()),
                request("hand", "A", 1, 1, 0.1, 0, Optional.of(new TubeRef("R1", 1, Show.at(1))))));

        assertThat(allocation.tubes()).containsEntry("hand", new Tube("R1", 1, true)).containsEntry("first", new Tube("R1", 2, false));
    }

    @Test
    void aChainThatComesInLaterMovesAsFewAsPossible() {
        show.rack("R1", "A", 4, 0.075).rack("R2", "A", 4, 0.075);
        Map<String, Tube> before = Map.of("a", new Tube("R1", 2, false), "b", new Tube("R2", 2, false), "c", new Tube("R2", 3, false));
        List<Request> requests = new ArrayList<>();
        List.of("a", "b", "c").forEach(key -> requests.add(request(key, "A", 0, 1, 0.075, 0, Optional.empty())));
        requests.add(request("chain", "A", 1, 3, 0.075, 0, Optional.empty()));

        Map<String, Tube> after = new FieldAllocator(new Memory(Map.of(), before)).allocate(new Field(show.script()), requests).tubes();

        // only a has to go, to one of the two ends of R2
        assertThat(after).containsEntry("b", before.get("b")).containsEntry("c", before.get("c"));
        assertThat(after.get("chain").rack()).isEqualTo("R1");
        assertThat(after).hasSize(4);
    }

    private static Request request(String key, String position, long fireUs, int pieces, double calibreM, double tiltDeg, Optional<TubeRef> tube) {
        return new Request(key, 0, fireUs, position, "Peony", true, Optional.of(calibreM), pieces, new Aim(tiltDeg, Lean.SIDE, 0), Optional.empty(),
                tube);
    }

    /** Small racks at one place with what is to be loaded. */
    private static final class Case {
        private final Show show = new Show();
        private final List<Request> requests = new ArrayList<>();

        static Case random(Random random) {
            Case small = new Case();
            int racks = 1 + random.nextInt(3);
            for (int r = 0; r < racks; r++) {
                boolean fan = random.nextInt(3) == 0;
                TiltRange tilt = fan ? new TiltRange(-10, 10) : random.nextBoolean() ? new TiltRange(0, 0) : new TiltRange(-10, 10);
                List<Rack.TubeRun> runs = new ArrayList<>();
                runs.add(new Rack.TubeRun(1 + random.nextInt(3), 0.075, Optional.empty(), Show.at(1)));
                if (random.nextBoolean()) {
                    runs.add(new Rack.TubeRun(1, 0.1, Optional.empty(), Show.at(1)));
                }
                small.show.racks.add(new Rack("R" + r, "A", runs, Optional.empty(), tilt, fan, Optional.empty(), Show.at(1)));
            }
            int count = 1 + random.nextInt(6);
            for (int i = 0; i < count; i++) {
                small.requests.add(small.request("k" + i, random));
            }
            return small;
        }

        Request request(String key, Random random) {
            return TubeAllocationTest.request(key, "A", requests.size(), random.nextInt(4) == 0 ? 2 : 1, random.nextInt(4) == 0 ? 0.1 : 0.075,
                    (random.nextInt(3) - 1) * 10, Optional.empty());
        }

        Field field() {
            return new Field(show.script());
        }

        int refused(Map<String, Tube> tubes) {
            Set<Tube> taken = new HashSet<>();
            for (Request request : requests) {
                Tube tube = tubes.get(request.key());
                for (int i = 0; tube != null && i < request.pieces(); i++) {
                    assertThat(suits(request, tube.rack(), tube.tube() + i)).isTrue();
                    assertThat(taken.add(new Tube(tube.rack(), tube.tube() + i, false))).isTrue();
                }
            }
            return (int) requests.stream().filter(request -> !tubes.containsKey(request.key())).count();
        }

        /** Whether everything that had a tube can keep it while no more than necessary is refused. */
        boolean couldStay(Map<String, Tube> before) {
            Set<Tube> taken = new HashSet<>();
            requests.stream().filter(request -> before.containsKey(request.key())).forEach(request -> {
                for (int i = 0; i < request.pieces(); i++) {
                    taken.add(new Tube(before.get(request.key()).rack(), before.get(request.key()).tube() + i, false));
                }
            });
            List<Request> others = requests.stream().filter(request -> !before.containsKey(request.key())).toList();
            return fewestRefused(others, 0, taken) == fewestRefused();
        }

        int fewestRefused() {
            return fewestRefused(requests, 0, new HashSet<>());
        }

        private int fewestRefused(List<Request> all, int next, Set<Tube> taken) {
            if (next == all.size()) {
                return 0;
            }
            Request request = all.get(next);
            int fewest = 1 + fewestRefused(all, next + 1, taken);
            for (Rack rack : show.racks) {
                for (int first = 1; first + request.pieces() - 1 <= rack.tubes() && fewest > 0; first++) {
                    Set<Tube> wanted = new HashSet<>();
                    boolean suits = true;
                    for (int i = 0; i < request.pieces(); i++) {
                        suits &= suits(request, rack.name(), first + i);
                        wanted.add(new Tube(rack.name(), first + i, false));
                    }
                    if (suits && wanted.stream().noneMatch(taken::contains)) {
                        taken.addAll(wanted);
                        fewest = Math.min(fewest, fewestRefused(all, next + 1, taken));
                        taken.removeAll(wanted);
                    }
                }
            }
            return fewest;
        }

        /** Calibre and tilt, written down independently of the allocation. */
        private boolean suits(Request request, String rackName, int tube) {
            Map<String, Rack> racks = new HashMap<>();
            show.racks.forEach(rack -> racks.put(rack.name(), rack));
            Rack rack = racks.get(rackName);
            double tilt = request.aim().tiltDeg();
            double own = rack.tubes() == 1 ? 0 : -10 + 20.0 * (tube - 1) / (rack.tubes() - 1);
            boolean tilts = rack.fixedFan() ? Math.abs(own - tilt) <= 2.5 : tilt >= rack.tilt().fromDeg() && tilt <= rack.tilt().toDeg();
            return tilts && rack.runOf(tube).orElseThrow().calibreM() == request.calibreM().orElseThrow();
        }

        @Override
        public String toString() {
            return show.racks + " " + requests.stream().map(r -> r.key() + " " + r.pieces() + "x" + r.calibreM().get() + "/" + r.aim().tiltDeg()).toList();
        }
    }
}
