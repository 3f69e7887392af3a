package org.girandole.plan.allocate;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.girandole.plan.allocate.PinProblem.Group;
import org.girandole.plan.allocate.PinProblem.Solution;

/**
 * Gives each firing of a problem its module, following a distribution by counts. Where the gap between pins forbids that, firings change places;
 * where that does not help, a further module is opened; what then still has no place is refused.
 */
final class PinAssignment {
    private static final int NONE = -1;

    private final PinProblem problem;
    private final boolean[] open;
    private final int[] moduleOf;
    private final int[] placeOf;

    PinAssignment(PinProblem problem, boolean[] open) {
        this.problem = problem;
        this.open = open.clone();
        this.moduleOf = new int[problem.demands().size()];
        this.placeOf = new int[problem.demands().size()];
        Arrays.fill(moduleOf, NONE);
        for (int g = 0; g < problem.places().size(); g++) {
            for (int d : problem.places().get(g).demands()) {
                placeOf[d] = g;
            }
        }
    }

    /** Module of each firing, -1 for the refused. The loads of the problem's modules are brought up to date. */
    int[] assign() {
        Solution solution = problem.solve(open);
        int[][] left = solution.counts();
        for (int g = 0; g < problem.places().size(); g++) {
            stay(problem.places().get(g), left[g]);
        }
        List<Integer> homeless = new ArrayList<>();
        for (int d = 0; d < moduleOf.length; d++) {
            if (moduleOf[d] == NONE && !follow(d, left[placeOf[d]])) {
                homeless.add(d);
            }
        }
        homeless.removeIf(this::move);
        if (!homeless.isEmpty() && moduleOf.length <= PinSearch.MOST_DEMANDS) {
            search();
        } else {
            homeless.removeIf(d -> exchange(d, false) || exchange(d, true) || openAnother(d));
        }
        return moduleOf;
    }

    /** Replaces the assignment by the best there is. */
    private void search() {
        int[] start = moduleOf.clone();
        for (int d = 0; d < moduleOf.length; d++) {
            if (moduleOf[d] != NONE) {
                load(moduleOf[d]).unplan(request(d));
                moduleOf[d] = NONE;
            }
        }
        int[] best = new PinSearch(problem, start).best();
        for (int d = 0; d < best.length; d++) {
            if (best[d] != NONE) {
                put(d, best[d]);
            }
        }
    }

    /** Remembered firings stay on their module as far as the distribution leaves them there. */
    private void stay(Group group, int[] left) {
        for (int d : group.demands()) {
            int module = problem.demands().get(d).remembered();
            if (module >= 0 && left[module] > 0 && load(module).inTime(request(d))) {
                put(d, module);
                left[module]--;
            }
        }
    }

    private boolean follow(int d, int[] left) {
        int nearest = NONE;
        for (int m = 0; m < left.length; m++) {
            if (left[m] > 0 && load(m).inTime(request(d)) && (nearest == NONE || lead(d, m) < lead(d, nearest))) {
                nearest = m;
            }
        }
        if (nearest == NONE) {
            return false;
        }
        left[nearest]--;
        put(d, nearest);
        return true;
    }

    private boolean move(int d) {
        int nearest = nearest(d, NONE, true);
        if (nearest != NONE) {
            put(d, nearest);
        }
        return nearest != NONE;
    }

    private boolean openAnother(int d) {
        int nearest = nearest(d, NONE, false);
        if (nearest != NONE) {
            open[nearest] = true;
            put(d, nearest);
        }
        return nearest != NONE;
    }

    /** The nearest module, open or closed, that can take a firing besides what it has. */
    private int nearest(int d, int butNot, boolean opened) {
        int nearest = NONE;
        for (int m = 0; m < open.length; m++) {
            if (m != butNot && open[m] == opened && takes(m, d) && (nearest == NONE || lead(d, m) < lead(d, nearest))) {
                nearest = m;
            }
        }
        return nearest;
    }

    private boolean takes(int module, int d) {
        return problem.serves(module, request(d).position()) && load(module).room() > 0 && load(module).inTime(request(d));
    }

    /** Finds a firing that can go elsewhere and leaves a place that this one can take; the cheapest such pair changes places. */
    private boolean exchange(int d, boolean alsoRemembered) {
        int bestOther = NONE;
        int bestTo = NONE;
        double bestCost = 0;
        for (int other = 0; other < moduleOf.length; other++) {
            int m = moduleOf[other];
            boolean mayMove = alsoRemembered || problem.demands().get(other).remembered() < 0;
            if (m == NONE || !mayMove || !problem.serves(m, request(d).position())) {
                continue;
            }
            load(m).unplan(request(other));
            boolean fits = takes(m, d);
            int to = NONE;
            if (fits) {
                load(m).plan(request(d));
                to = nearest(other, m, true);
                load(m).unplan(request(d));
            }
            load(m).plan(request(other));
            double cost = to == NONE ? 0 : lead(d, m) + lead(other, to) - lead(other, m);
            if (to != NONE && (bestOther == NONE || cost < bestCost)) {
                bestOther = other;
                bestTo = to;
                bestCost = cost;
            }
        }
        if (bestOther == NONE) {
            return false;
        }
        int freed = moduleOf[bestOther];
        load(freed).unplan(request(bestOther));
        put(d, freed);
        put(bestOther, bestTo);
        return true;
    }

    private void put(int d, int module) {
        load(module).plan(request(d));
        moduleOf[d] = module;
    }

    private Request request(int d) {
        return problem.demands().get(d).request();
    }

    private ModuleLoad load(int module) {
        return problem.modules().get(module);
    }

    private double lead(int d, int module) {
        return problem.leadM(placeOf[d], module);
    }
}
