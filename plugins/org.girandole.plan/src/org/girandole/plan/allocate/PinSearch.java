package org.girandole.plan.allocate;

import java.util.Arrays;
import org.girandole.plan.allocate.PinProblem.Demand;

/**
 * The best assignment of a small problem by trying all of them, depth first with bounds. Needed where the gap between pins decides, for which
 * no flow is exact.
 */
final class PinSearch {
    /** Problems with more firings are left to exchanging places. */
    static final int MOST_DEMANDS = 24;
    private static final int MOST_NODES = 200_000;

    private final PinProblem problem;
    private final int[] placeOf;
    private final double[] leastLead;
    private final int[] choice;
    private int[] best;
    private Cost bestCost;
    private int nodes;

    /** What an assignment costs, most important first. */
    record Cost(int refused, int moved, int modules, double leadM) implements Comparable<Cost> {
        @Override
        public int compareTo(Cost other) {
            int byRefused = Integer.compare(refused, other.refused);
            int byMoved = byRefused != 0 ? byRefused : Integer.compare(moved, other.moved);
            int byModules = byMoved != 0 ? byMoved : Integer.compare(modules, other.modules);
            return byModules != 0 ? byModules : Double.compare(leadM, other.leadM);
        }
    }

    /** @param start an assignment to do better than: the module of each firing, -1 for the refused; the modules must be without it */
    PinSearch(PinProblem problem, int[] start) {
        this.problem = problem;
        int demands = problem.demands().size();
        placeOf = new int[demands];
        for (int g = 0; g < problem.places().size(); g++) {
            for (int d : problem.places().get(g).demands()) {
                placeOf[d] = g;
            }
        }
        leastLead = new double[demands + 1];
        for (int d = demands - 1; d >= 0; d--) {
            double least = Double.POSITIVE_INFINITY;
            for (int m = 0; m < problem.modules().size(); m++) {
                least = Math.min(least, problem.leadM(placeOf[d], m));
            }
            leastLead[d] = leastLead[d + 1] + (Double.isInfinite(least) ? 0 : least);
        }
        choice = new int[demands];
        best = start.clone();
        bestCost = cost(start);
    }

    /** The best assignment found; the modules are left without it. */
    int[] best() {
        search(0, new Cost(0, 0, 0, 0));
        return best;
    }

    /** Cost of an assignment; modules that are in use anyway cost nothing. */
    private Cost cost(int[] assignment) {
        boolean[] opened = new boolean[problem.modules().size()];
        Cost cost = new Cost(0, 0, 0, 0);
        for (int d = 0; d < assignment.length; d++) {
            cost = plus(cost, d, assignment[d], assignment[d] >= 0 && opens(assignment[d]) && !opened[assignment[d]]);
            if (assignment[d] >= 0) {
                opened[assignment[d]] = true;
            }
        }
        return cost;
    }

    private boolean opens(int module) {
        return !problem.modules().get(module).isUsed();
    }

    private Cost plus(Cost cost, int d, int module, boolean opensModule) {
        int remembered = problem.demands().get(d).remembered();
        return new Cost(cost.refused() + (module < 0 ? 1 : 0), cost.moved() + (remembered >= 0 && remembered != module ? 1 : 0),
                cost.modules() + (opensModule ? 1 : 0), cost.leadM() + (module < 0 ? 0 : problem.leadM(placeOf[d], module)));
    }

    private void search(int d, Cost cost) {
        // What is refused later has no lead: the bound on leads holds only as long as nothing more may be refused.
        double leadM = cost.leadM() + (cost.refused() == bestCost.refused() ? leastLead[d] : 0);
        boolean hopeless = new Cost(cost.refused(), cost.moved(), cost.modules(), leadM).compareTo(bestCost) >= 0;
        if (hopeless || nodes++ >= MOST_NODES) {
            return;
        }
        if (d == choice.length) {
            best = choice.clone();
            bestCost = cost;
            return;
        }
        Demand demand = problem.demands().get(d);
        for (int m : byLead(d)) {
            ModuleLoad load = problem.modules().get(m);
            if (problem.serves(m, demand.request().position()) && load.room() > 0 && load.inTime(demand.request())) {
                boolean opensModule = opens(m);
                load.plan(demand.request());
                choice[d] = m;
                search(d + 1, plus(cost, d, m, opensModule));
                load.unplan(demand.request());
            }
        }
        choice[d] = -1;
        search(d + 1, plus(cost, d, -1, false));
    }

    private int[] byLead(int d) {
        Integer[] order = new Integer[problem.modules().size()];
        Arrays.setAll(order, m -> m);
        Arrays.sort(order, (a, b) -> Double.compare(problem.leadM(placeOf[d], a), problem.leadM(placeOf[d], b)));
        return Arrays.stream(order).mapToInt(Integer::intValue).toArray();
    }
}
