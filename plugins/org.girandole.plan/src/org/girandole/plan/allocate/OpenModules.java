package org.girandole.plan.allocate;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.girandole.plan.script.ModuleType;

/**
 * Chooses the modules that are used: as few as possible beside those that are in use anyway, without refusing a firing that all modules
 * together could take; among equally few, those with the shortest leads. Small fields are searched through; in large ones modules are
 * closed one after the other as long as nothing is lost, then two are exchanged for one where that is possible.
 */
final class OpenModules {
    /** Work after which the search through all choices is given up; the same on every machine, so that the answer is too. */
    private static final long MOST_WORK = 400_000;

    private final PinProblem problem;
    private final int unavoidable;
    private long work;
    private boolean[] best;
    private double bestCost;

    OpenModules(PinProblem problem) {
        this.problem = problem;
        boolean[] all = new boolean[problem.modules().size()];
        Arrays.fill(all, true);
        this.unavoidable = problem.refused(all);
    }

    /** Which modules are open. */
    boolean[] choose() {
        boolean[] inUse = new boolean[problem.modules().size()];
        for (int m = 0; m < inUse.length; m++) {
            inUse[m] = problem.modules().get(m).isUsed() || isRemembered(m);
        }
        if (problem.refused(inUse) == unavoidable) {
            return inUse;
        }
        List<List<Integer>> kinds = interchangeable(inUse);
        int closed = kinds.stream().mapToInt(List::size).sum();
        for (int more = leastMore(inUse); more <= closed && best == null && work < MOST_WORK; more++) {
            search(inUse, kinds, 0, more, wanted(inUse));
        }
        return best != null && work < MOST_WORK ? best : better(best, closing(inUse));
    }

    private boolean isRemembered(int module) {
        return problem.demands().stream().anyMatch(demand -> demand.remembered() == module);
    }

    /** Closed modules, those that can do the same at the same positions together, the largest first. */
    private List<List<Integer>> interchangeable(boolean[] inUse) {
        Map<List<Object>, List<Integer>> kinds = new LinkedHashMap<>();
        for (int m = 0; m < inUse.length; m++) {
            if (!inUse[m]) {
                ModuleLoad load = problem.modules().get(m);
                ModuleType type = load.stand().type();
                List<Object> kind = List.of(load.room(), type.pinsAtOnce(), type.pinGapUs(), load.stand().module().positions());
                kinds.computeIfAbsent(kind, k -> new ArrayList<>()).add(m);
            }
        }
        List<List<Integer>> largestFirst = new ArrayList<>(kinds.values());
        largestFirst.sort(Comparator.comparingInt((List<Integer> kind) -> -room(kind.get(0))));
        return largestFirst;
    }

    /** Pins wanted beside the room of these modules. */
    private int wanted(boolean[] open) {
        int wanted = problem.demands().size() - unavoidable;
        for (int m = 0; m < open.length; m++) {
            wanted -= open[m] ? room(m) : 0;
        }
        return wanted;
    }

    /** A lower bound by room alone. */
    private int leastMore(boolean[] inUse) {
        int wanted = wanted(inUse);
        List<Integer> rooms = new ArrayList<>();
        for (int m = 0; m < inUse.length; m++) {
            if (!inUse[m]) {
                rooms.add(room(m));
            }
        }
        rooms.sort(Comparator.reverseOrder());
        int more = 0;
        while (wanted > 0 && more < rooms.size()) {
            wanted -= rooms.get(more++);
        }
        return Math.max(1, more);
    }

    /** Tries every way to open {@code more} modules of the kinds from {@code kind} on that has the room still wanted. */
    private void search(boolean[] open, List<List<Integer>> kinds, int kind, int more, int wanted) {
        work++;
        if (work >= MOST_WORK || mostRoom(kinds, kind, more) < Math.max(0, wanted)) {
            return;
        }
        if (more == 0) {
            judge(open);
            return;
        }
        List<Integer> equal = kinds.get(kind);
        for (int count = Math.min(more, equal.size()); count >= 0; count--) {
            boolean[] with = open.clone();
            equal.subList(0, count).forEach(m -> with[m] = true);
            search(with, kinds, kind + 1, more - count, wanted - count * room(equal.get(0)));
        }
    }

    /** The most room that so many modules of the kinds from {@code kind} on have; -1 when there are not so many. */
    private int mostRoom(List<List<Integer>> kinds, int kind, int more) {
        int room = 0;
        int left = more;
        for (int k = kind; k < kinds.size() && left > 0; k++) {
            int count = Math.min(left, kinds.get(k).size());
            room += count * room(kinds.get(k).get(0));
            left -= count;
        }
        return left > 0 ? -1 : room;
    }

    private int room(int module) {
        return problem.modules().get(module).room();
    }

    private void judge(boolean[] open) {
        work += problem.size();
        if (problem.refused(open) > unavoidable) {
            return;
        }
        double cost = problem.solve(open).cost();
        if (best == null || cost < bestCost) {
            best = open.clone();
            bestCost = cost;
        }
    }

    /** Closes what can be closed, the smallest load first. */
    private boolean[] closing(boolean[] inUse) {
        boolean[] open = new boolean[inUse.length];
        Arrays.fill(open, true);
        int[] load = new int[open.length];
        for (int[] counts : problem.solve(open).counts()) {
            for (int m = 0; m < counts.length; m++) {
                load[m] += counts[m];
            }
        }
        List<Integer> order = new ArrayList<>();
        for (int m = 0; m < open.length; m++) {
            if (!inUse[m]) {
                open[m] = load[m] > 0;
                order.add(m);
            }
        }
        order.sort(Comparator.comparingInt((Integer m) -> room(m)).thenComparingInt(m -> load[m])
                .thenComparing(Comparator.reverseOrder()));
        close(open, order);
        exchange(open, order);
        return open;
    }

    private void close(boolean[] open, List<Integer> order) {
        for (int m : order) {
            if (open[m]) {
                open[m] = false;
                open[m] = problem.refused(open) > unavoidable;
            }
        }
    }

    /** Opens one closed module at a time and keeps it open when two others can be closed for it. */
    private void exchange(boolean[] open, List<Integer> order) {
        long tries = Math.max(50, MOST_WORK / problem.size());
        for (int m : order) {
            if (open[m] || tries <= 0 || isTight(open)) {
                continue;
            }
            boolean[] with = open.clone();
            with[m] = true;
            int gained = -1;
            for (int other : order) {
                if (other != m && with[other] && tries-- > 0) {
                    with[other] = false;
                    if (problem.refused(with) > unavoidable) {
                        with[other] = true;
                    } else {
                        gained++;
                    }
                }
            }
            if (gained > 0) {
                System.arraycopy(with, 0, open, 0, open.length);
            }
        }
    }

    /** Whether room alone forbids fewer modules. */
    private boolean isTight(boolean[] open) {
        int room = 0;
        int smallest = Integer.MAX_VALUE;
        for (int m = 0; m < open.length; m++) {
            if (open[m]) {
                room += room(m);
                smallest = Math.min(smallest, room(m));
            }
        }
        return room - smallest < problem.demands().size() - unavoidable;
    }

    private boolean[] better(boolean[] searched, boolean[] closed) {
        if (searched == null || count(closed) < count(searched)) {
            return closed;
        }
        return count(searched) < count(closed) || bestCost <= problem.solve(closed).cost() ? searched : closed;
    }

    private static int count(boolean[] open) {
        int count = 0;
        for (boolean isOpen : open) {
            count += isOpen ? 1 : 0;
        }
        return count;
    }
}
