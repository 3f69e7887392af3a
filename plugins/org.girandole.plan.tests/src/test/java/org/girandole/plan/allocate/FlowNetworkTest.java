package org.girandole.plan.allocate;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;

/** Networks of firings and modules. */
class FlowNetworkTest {
    private static final double REFUSED = 1e7;

    /** A network as it came up while a show was half written: six groups of firings, three modules with room for 30 each. */
    @Test
    void groupsGoToTheirNearestModules() {
        int[] sizes = {4, 15, 15, 15, 4, 9};
        double[] leadKm = {0.002, 0.006666904755831213, 0.005300000000000001, 0.006666904755831213, 0.006666904755831213, 0.009379024325749306};
        FlowNetwork network = new FlowNetwork();
        int source = network.node();
        int sink = network.node();
        int[] modules = {network.node(), network.node(), network.node()};
        for (int module : modules) {
            network.arc(module, sink, 30, 0);
        }
        for (int g = 0; g < sizes.length; g++) {
            int group = network.node();
            network.arc(source, group, sizes[g], 0);
            network.arc(group, sink, sizes[g], REFUSED);
            for (int m = 0; m < modules.length; m++) {
                network.arc(group, modules[m], sizes[g], leadKm[g] + m * 1e-9);
            }
        }
        // By hand: 4 x 2 m + 15 x 6.6669 m + 15 x 5.3 m + 15 x 6.6669 m + 4 x 6.6669 m + 9 x 9.3790 m = 398.586 m; the three modules are alike to a micrometre.
        assertThat(network.cost(network.solve(source, sink, 62))).isCloseTo(0.398586, within(1e-6));
    }

    @Test
    void whatFitsIsNeverRefused() {
        for (int seed = 0; seed < 2000; seed++) {
            SplittableRandom random = new SplittableRandom(seed);
            int groups = random.nextInt(1, 13);
            int modules = random.nextInt(1, 9);
            int room = random.nextInt(1, 40);
            FlowNetwork network = new FlowNetwork();
            int source = network.node();
            int sink = network.node();
            int[] nodes = new int[modules];
            for (int m = 0; m < modules; m++) {
                nodes[m] = network.node();
                network.arc(nodes[m], sink, room, 0);
            }
            int wanted = 0;
            int[] refused = new int[groups];
            for (int g = 0; g < groups; g++) {
                int size = random.nextInt(1, 20);
                int group = network.node();
                wanted += size;
                network.arc(source, group, size, 0);
                refused[g] = network.arc(group, sink, size, REFUSED);
                for (int m = 0; m < modules; m++) {
                    network.arc(group, nodes[m], size, random.nextDouble(0.05) + (random.nextInt(4) == 0 ? 1e3 : 0) + m * 1e-9);
                }
            }
            int[] flow = network.solve(source, sink, wanted);
            int left = 0;
            for (int arc : refused) {
                left += flow[arc];
            }
            assertThat(left).as("refused of %d for %d modules of %d, seed %d", wanted, modules, room, seed).isEqualTo(Math.max(0, wanted - modules * room));
        }
    }
}
