package org.girandole.plan.allocate;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.girandole.plan.PlannedCue.Tube;

/**
 * Looks for tubes in a row for the chains of one position such that the fewest pieces are refused, single ones included. Depth first, best
 * block first; the search ends with the first placement that refuses nothing, or after a fixed number of tries with the best one seen.
 */
final class ChainSearch {
    private static final int MOST_TRIES = 200;

    private final List<Request> singles;
    private final boolean moving;
    private PositionLoad best;
    private int tries;

    /** A place for a chain, and what speaks against it. */
    private record Block(RackTubes rack, int first, Set<Request> inTheWay, boolean mixes, int leftOver) {
    }

    /** @param moving whether remembered single pieces may be moved */
    ChainSearch(List<Request> singles, boolean moving) {
        this.singles = singles;
        this.moving = moving;
    }

    PositionLoad place(PositionLoad start, List<Request> chains) {
        search(start, chains, 0, List.of());
        return best;
    }

    private boolean search(PositionLoad load, List<Request> chains, int next, List<Request> displaced) {
        if (next == chains.size()) {
            return finish(load, displaced);
        }
        Request chain = chains.get(next);
        for (Block block : blocks(load, chain)) {
            PositionLoad deeper = load.copy();
            RackTubes rack = deeper.racks().get(load.racks().indexOf(block.rack()));
            List<Request> alsoDisplaced = new ArrayList<>(displaced);
            block.inTheWay().forEach(request -> {
                alsoDisplaced.add(request);
                deeper.remove(request);
            });
            deeper.put(chain, rack, block.first());
            if (search(deeper, chains, next + 1, alsoDisplaced) || tries >= MOST_TRIES) {
                return true;
            }
        }
        PositionLoad without = load.copy();
        without.refuse(chain);
        return search(without, chains, next + 1, displaced) || tries >= MOST_TRIES;
    }

    /** Places the single pieces; true when nothing at all is refused. */
    private boolean finish(PositionLoad load, List<Request> displaced) {
        tries++;
        PositionLoad end = load.copy();
        List<Request> all = new ArrayList<>(displaced);
        all.addAll(singles);
        Map<Request, Tube> where = new LinkedHashMap<>();
        if (moving) {
            end.loaded().forEach((request, tube) -> {
                if (request.pieces() == 1) {
                    where.put(request, tube);
                }
            });
            where.keySet().forEach(end::remove);
            all.addAll(where.keySet());
        }
        new SinglesFlow(end, all, where).place();
        if (best == null || end.refused().size() < best.refused().size()) {
            best = end;
        }
        return end.refused().isEmpty();
    }

    /** Blocks for a chain: fewest loads in the way, then racks without other loads, then the tightest. */
    private List<Block> blocks(PositionLoad load, Request chain) {
        List<Block> blocks = new ArrayList<>();
        for (RackTubes rack : load.racks()) {
            for (int first = 1; first + chain.pieces() - 1 <= rack.tubes(); first++) {
                block(load, rack, chain, first, blocks);
            }
        }
        blocks.sort(Comparator.comparingInt((Block block) -> block.inTheWay().size()).thenComparing(Block::mixes)
                .thenComparingInt(Block::leftOver).thenComparingInt(Block::first));
        return blocks;
    }

    private void block(PositionLoad load, RackTubes rack, Request chain, int first, List<Block> blocks) {
        Set<Request> inTheWay = new LinkedHashSet<>();
        for (int tube = first; tube < first + chain.pieces(); tube++) {
            if (!rack.suits(chain, tube)) {
                return;
            }
            if (!rack.isFree(tube)) {
                Request there = rack.loadOf(tube);
                if (!moving || there.pieces() > 1 || !load.loaded().containsKey(there)) {
                    return;
                }
                inTheWay.add(there);
            }
        }
        boolean mixes = !rack.isEmpty();
        blocks.add(new Block(rack, first, inTheWay, mixes, rack.tubes() - chain.pieces()));
    }
}
