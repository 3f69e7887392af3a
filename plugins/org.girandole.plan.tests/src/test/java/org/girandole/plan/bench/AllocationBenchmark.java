package org.girandole.plan.bench;

import java.lang.management.ManagementFactory;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Random;
import java.util.stream.IntStream;
import org.girandole.plan.PlannedCue.Aim;
import org.girandole.plan.PlannedCue.Pin;
import org.girandole.plan.Show;
import org.girandole.plan.allocate.Allocation;
import org.girandole.plan.allocate.Field;
import org.girandole.plan.allocate.FieldAllocator;
import org.girandole.plan.allocate.Memory;
import org.girandole.plan.allocate.Request;
import org.girandole.plan.script.Point;
import org.girandole.plan.script.ScoreItem.Lean;
import org.girandole.plan.script.Site;

/**
 * How long the allocation of a large field takes, how far it is from a lower bound, and what one more cue costs. Not a test: run its main.
 */
public final class AllocationBenchmark {
    private static final int IGNITERS = 10_000;
    private static final int MODULES = 400;
    private static final int POSITIONS = 50;

    private AllocationBenchmark() {
    }

    /** Prints one table; arguments are ignored. */
    public static void main(String[] args) {
        for (int serves = 1; serves <= 3; serves++) {
            for (boolean limits : new boolean[] {false, true}) {
                measure(serves, limits);
            }
        }
    }

    private static void measure(int serves, boolean limits) {
        Show show = new Show();
        show.positions.clear();
        for (int p = 0; p < POSITIONS; p++) {
            show.positions.add(new Site.Position("P" + p, new Point(20.0 * p, 0), Show.at(1)));
        }
        for (int m = 0; m < MODULES; m++) {
            int first = m % POSITIONS;
            show.module("M" + m, 32, limits ? Optional.of(8) : Optional.empty(), limits ? Optional.of(20_000L) : Optional.empty(),
                    IntStream.range(0, serves).mapToObj(k -> "P" + (first + k) % POSITIONS).toArray(String[]::new));
        }
        Random random = new Random(7);
        List<Request> requests = new ArrayList<>();
        for (int i = 0; i < IGNITERS; i++) {
            requests.add(request("k" + i, random));
        }
        requests.sort(Comparator.comparingLong(Request::fireUs).thenComparing(Request::key));
        Field field = new Field(show.script());
        long start = cpuMs();
        Allocation fresh = new FieldAllocator().allocate(field, requests);
        long freshMs = cpuMs() - start;
        List<Request> edited = new ArrayList<>(requests);
        edited.add(IGNITERS / 2, request("more", random));
        start = cpuMs();
        Allocation again = new FieldAllocator(new Memory(fresh.pins(), fresh.tubes())).allocate(field, edited);
        long editMs = cpuMs() - start;
        long moved = fresh.pins().entrySet().stream().filter(entry -> !entry.getValue().equals(again.pins().get(entry.getKey()))).count();
        System.out.printf(Locale.ROOT, "%d igniters, %d modules serving %d, limits %s: %d ms; refused %d, modules %d (at least %d); "
                + "one more cue: %d ms, moved %d, refused %d%n", IGNITERS, MODULES, serves, limits, freshMs, fresh.refusals().size(),
                fresh.pins().values().stream().map(Pin::module).distinct().count(), leastModules(requests, serves), editMs, moved,
                again.refusals().size());
    }

    private static Request request(String key, Random random) {
        return new Request(key, 0, 10_000L * random.nextInt(60_000), "P" + random.nextInt(POSITIONS), "Peony", false, Optional.empty(), 1,
                new Aim(0, Lean.SIDE, 0), Optional.empty(), Optional.empty());
    }

    /** A lower bound: each module fires 32 at most; positions that share no module add up. */
    private static long leastModules(List<Request> requests, int serves) {
        if (serves > 1) {
            return (requests.size() + 31) / 32;
        }
        Map<String, Integer> at = new HashMap<>();
        requests.forEach(request -> at.merge(request.position(), 1, Integer::sum));
        return at.values().stream().mapToInt(count -> (count + 31) / 32).sum();
    }

    private static long cpuMs() {
        return ManagementFactory.getThreadMXBean().getCurrentThreadCpuTime() / 1_000_000;
    }
}
