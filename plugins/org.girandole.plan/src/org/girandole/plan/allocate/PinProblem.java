package org.girandole.plan.allocate;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.girandole.plan.script.Point;
import org.girandole.plan.script.Rack;

/**
 * Firings that want a pin and the modules they may get one of: one connected part of the field. As long as only counts matter, firings at one
 * place are interchangeable; only moments at which a limit on time can bind are told apart.
 */
final class PinProblem {
    /** Costs are kilometres of lead, so that no sum of leads outweighs a move and no sum of moves a refusal. */
    private static final double MOVED = 1e3;
    private static final double REFUSED = 1e7;
    /** Of equally near modules the earlier in the script is filled first; a micrometre of lead decides nothing else. */
    private static final double LATER = 1e-9;

    private final List<ModuleLoad> modules;
    private final List<Demand> demands;
    private final List<Group> places;
    private final List<Group> positions;
    private final double[][] leadM;

    /**
     * A firing that wants a pin.
     *
     * @param remembered index of the module it was on, -1 if on none
     */
    record Demand(Request request, Optional<Rack> rack, int remembered) {
    }

    /** A moment in one slot. */
    private record Moment(int slot, long fireUs) {
        static Moment of(Demand demand) {
            return new Moment(demand.request().slot(), demand.request().fireUs());
        }
    }

    /** Firings that are interchangeable; {@code moment} is null unless a limit on time can bind for them. */
    record Group(String position, Moment moment, List<Integer> demands) {
    }

    /** Name of a group: racks at one place have leads of one length. */
    private record GroupKey(String position, Optional<Point> rackAt, Moment moment) {
    }

    /**
     * A distribution of groups over modules.
     *
     * @param counts firings of each group on each module
     */
    record Solution(int refused, double cost, int[][] counts) {
    }

    PinProblem(Field field, List<ModuleLoad> modules, List<Demand> demands) {
        this.modules = modules;
        this.demands = demands;
        Map<Moment, Integer> atOnce = new LinkedHashMap<>();
        demands.forEach(demand -> atOnce.merge(Moment.of(demand), 1, Integer::sum));
        Map<Moment, Boolean> binds = new LinkedHashMap<>();
        atOnce.forEach((moment, count) -> binds.put(moment, canBind(moment, count)));
        places = groups(binds, true);
        positions = groups(binds, false);
        leadM = new double[places.size()][modules.size()];
        for (int g = 0; g < places.size(); g++) {
            Demand first = demands.get(places.get(g).demands().get(0));
            for (int m = 0; m < modules.size(); m++) {
                leadM[g][m] = field.leadM(modules.get(m).stand(), first.request().position(), first.rack());
            }
        }
    }

    private boolean canBind(Moment moment, int count) {
        return modules.stream().anyMatch(module -> module.atOnce(moment.slot(), moment.fireUs()) + count > module.mostAtOnce()
                || !module.keepsGap(moment.slot(), moment.fireUs()));
    }

    private List<Group> groups(Map<Moment, Boolean> binds, boolean byRack) {
        Map<GroupKey, Group> groups = new LinkedHashMap<>();
        for (int d = 0; d < demands.size(); d++) {
            Demand demand = demands.get(d);
            Moment moment = Moment.of(demand);
            Moment told = binds.get(moment) ? moment : null;
            Optional<Point> rackAt = byRack ? demand.rack().flatMap(Rack::at) : Optional.empty();
            String position = demand.request().position();
            groups.computeIfAbsent(new GroupKey(position, rackAt, told), key -> new Group(position, told, new ArrayList<>())).demands().add(d);
        }
        return List.copyOf(groups.values());
    }

    List<ModuleLoad> modules() {
        return modules;
    }

    List<Demand> demands() {
        return demands;
    }

    List<Group> places() {
        return places;
    }

    boolean serves(int module, String position) {
        return modules.get(module).stand().module().positions().contains(position);
    }

    /** Lead in metres from a module to a place. */
    double leadM(int place, int module) {
        return leadM[place][module];
    }

    /** How many firings get no pin when only these modules are open. */
    int refused(boolean[] open) {
        return solve(open, positions, false).refused();
    }

    /** The distribution with the fewest refused, then the fewest moved, then the shortest leads. */
    Solution solve(boolean[] open) {
        return solve(open, places, true);
    }

    /** Roughly how much work one solution is. */
    int size() {
        return positions.size() * modules.size() + 1;
    }

    private Solution solve(boolean[] open, List<Group> groups, boolean withCost) {
        FlowNetwork network = new FlowNetwork();
        int source = network.node();
        int sink = network.node();
        int[] moduleNodes = new int[modules.size()];
        for (int m = 0; m < modules.size(); m++) {
            moduleNodes[m] = network.node();
            network.arc(moduleNodes[m], sink, open[m] ? modules.get(m).room() : 0, 0);
        }
        Map<Moment, int[]> momentNodes = new LinkedHashMap<>();
        int[] refusedArcs = new int[groups.size()];
        int[][] stayArcs = new int[groups.size()][modules.size()];
        int[][] moveArcs = new int[groups.size()][modules.size()];
        for (int g = 0; g < groups.size(); g++) {
            Group group = groups.get(g);
            int node = network.node();
            network.arc(source, node, group.demands().size(), 0);
            refusedArcs[g] = network.arc(node, sink, group.demands().size(), REFUSED);
            int[] remembered = withCost ? remembered(group) : new int[modules.size()];
            for (int m = 0; m < modules.size(); m++) {
                int to = !open[m] || !serves(m, group.position()) ? -1
                        : group.moment() == null ? moduleNodes[m] : momentNode(network, momentNodes, group.moment(), m, moduleNodes);
                double lead = withCost ? leadM[g][m] / 1000 + m * LATER : 0;
                stayArcs[g][m] = to < 0 || remembered[m] == 0 ? -1 : network.arc(node, to, remembered[m], lead);
                moveArcs[g][m] = to < 0 ? -1
                        : network.arc(node, to, group.demands().size(), lead + (withCost && anyRemembered(group) ? MOVED : 0));
            }
        }
        int[] flow = network.solve(source, sink, demands.size());
        int refused = 0;
        int[][] counts = new int[groups.size()][modules.size()];
        for (int g = 0; g < groups.size(); g++) {
            refused += flow[refusedArcs[g]];
            for (int m = 0; m < modules.size(); m++) {
                counts[g][m] = (stayArcs[g][m] < 0 ? 0 : flow[stayArcs[g][m]]) + (moveArcs[g][m] < 0 ? 0 : flow[moveArcs[g][m]]);
            }
        }
        return new Solution(refused, network.cost(flow), counts);
    }

    /** The node through which firings at one moment reach a module, -1 where they may not. */
    private int momentNode(FlowNetwork network, Map<Moment, int[]> nodes, Moment moment, int module, int[] moduleNodes) {
        int[] here = nodes.computeIfAbsent(moment, m -> new int[modules.size()]);
        if (here[module] == 0) {
            ModuleLoad load = modules.get(module);
            int room = load.mostAtOnce() == Integer.MAX_VALUE ? demands.size()
                    : load.mostAtOnce() - load.atOnce(moment.slot(), moment.fireUs());
            if (room <= 0 || !load.keepsGap(moment.slot(), moment.fireUs())) {
                here[module] = -1;
            } else {
                here[module] = network.node();
                network.arc(here[module], moduleNodes[module], room, 0);
            }
        }
        return here[module];
    }

    private int[] remembered(Group group) {
        int[] counts = new int[modules.size()];
        for (int d : group.demands()) {
            if (demands.get(d).remembered() >= 0) {
                counts[demands.get(d).remembered()]++;
            }
        }
        return counts;
    }

    private boolean anyRemembered(Group group) {
        return group.demands().stream().anyMatch(d -> demands.get(d).remembered() >= 0);
    }
}
