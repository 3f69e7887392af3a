package org.girandole.studio.views.site;

import java.util.ArrayList;
import java.util.Collections;
import java.util.Comparator;
import java.util.List;
import org.girandole.protocol.CueView.Spot;

/** The line that a rubber band about points would take: Andrew's monotone chain (Inf. Proc. Letters 9, 1979, p. 216). */
final class Hull {
    private Hull() {
    }

    /** The corners, once around; the points themselves when they are fewer than three. */
    static List<Spot> of(List<Spot> points) {
        List<Spot> sorted = points.stream().sorted(Comparator.comparingDouble(Spot::x).thenComparingDouble(Spot::y)).toList();
        if (sorted.size() < 3) {
            return sorted;
        }
        List<Spot> hull = half(sorted);
        List<Spot> back = new ArrayList<>(sorted);
        Collections.reverse(back);
        hull.addAll(half(back));
        return hull;
    }

    /** One side, without its last corner, which is the first of the other side. */
    private static List<Spot> half(List<Spot> sorted) {
        List<Spot> side = new ArrayList<>();
        for (Spot spot : sorted) {
            while (side.size() > 1 && turn(side.get(side.size() - 2), side.get(side.size() - 1), spot) <= 0) {
                side.remove(side.size() - 1);
            }
            side.add(spot);
        }
        side.remove(side.size() - 1);
        return side;
    }

    private static double turn(Spot a, Spot b, Spot c) {
        return (b.x() - a.x()) * (c.y() - a.y()) - (b.y() - a.y()) * (c.x() - a.x());
    }
}
