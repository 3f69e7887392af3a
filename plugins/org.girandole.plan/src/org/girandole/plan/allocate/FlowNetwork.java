package org.girandole.plan.allocate;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.jgrapht.alg.flow.mincost.CapacityScalingMinimumCostFlow;
import org.jgrapht.alg.flow.mincost.MinimumCostFlowProblem.MinimumCostFlowProblemImpl;
import org.jgrapht.graph.DirectedWeightedMultigraph;

/** A network of arcs with capacities and costs, through which a given amount is sent at the least cost. */
final class FlowNetwork {
    private static final int SCALED = CapacityScalingMinimumCostFlow.DEFAULT_SCALING_FACTOR;
    private static final int NOT_SCALED = 1;

    private final List<Arc> arcs = new ArrayList<>();
    private int nodes;

    private record Arc(int from, int to, int capacity, double cost) {
    }

    int node() {
        return nodes++;
    }

    /** Adds an arc and says its number; arcs that nothing can pass are numbered too. */
    int arc(int from, int to, int capacity, double cost) {
        arcs.add(new Arc(from, to, Math.max(0, capacity), cost));
        return arcs.size() - 1;
    }

    /**
     * The cheapest flow of {@code amount} from source to sink, by arc number. There must be room for it: networks here have an arc for what is
     * refused.
     */
    int[] solve(int source, int sink, int amount) {
        int[] flow = new int[arcs.size()];
        if (amount == 0) {
            return flow;
        }
        DirectedWeightedMultigraph<Integer, Integer> graph = new DirectedWeightedMultigraph<>(Integer.class);
        for (int node = 0; node < nodes; node++) {
            graph.addVertex(node);
        }
        for (int i = 0; i < arcs.size(); i++) {
            Arc arc = arcs.get(i);
            if (arc.capacity() > 0) {
                graph.addEdge(arc.from(), arc.to(), i);
                graph.setEdgeWeight(i, arc.cost());
            }
        }
        MinimumCostFlowProblemImpl<Integer, Integer> problem = new MinimumCostFlowProblemImpl<>(graph,
                node -> node == source ? amount : node == sink ? -amount : 0, arc -> arcs.get(arc).capacity());
        solved(problem).forEach((arc, value) -> flow[arc] = (int) Math.round(value));
        return flow;
    }

    /**
     * Scaled capacities go wrong on costs that are not whole numbers: of some networks the solver then says that nothing fits. Unscaled it solves
     * them all, at the same cost, but of equally cheap flows it often gives another; so it comes second, and shows keep the pins that they have.
     */
    private static Map<Integer, Double> solved(MinimumCostFlowProblemImpl<Integer, Integer> problem) {
        try {
            return new CapacityScalingMinimumCostFlow<Integer, Integer>(SCALED).getMinimumCostFlow(problem).getFlowMap();
        } catch (IllegalArgumentException e) {
            return new CapacityScalingMinimumCostFlow<Integer, Integer>(NOT_SCALED).getMinimumCostFlow(problem).getFlowMap();
        }
    }

    /** The cost of a flow. */
    double cost(int[] flow) {
        double cost = 0;
        for (int i = 0; i < flow.length; i++) {
            cost += flow[i] * arcs.get(i).cost();
        }
        return cost;
    }
}
