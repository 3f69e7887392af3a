package org.girandole.lang.ide.completion;

import java.util.HashSet;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;
import org.eclipse.lsp4j.CompletionItemKind;
import org.girandole.lang.compile.Sources;
import org.girandole.lang.scoping.Kind.Space;
import org.girandole.lang.show.GroupDef;
import org.girandole.lang.show.PositionDef;

/** Positions and groups of them. */
final class Places {
    private final Here here;

    Places(Here here) {
        this.here = here;
    }

    void propose() {
        here.names().ifPresent(names -> {
            names.in(Space.PLACE).values().stream().filter(PositionDef.class::isInstance).forEach(here::name);
            names.in(Space.PLACE).values().stream().filter(GroupDef.class::isInstance).forEach(here::name);
        });
        new Parameters(here).propose();
        here.out().word("all", CompletionItemKind.Keyword, "every position");
    }

    /** The positions that places mean, groups and ranges resolved, as far as that is known. */
    List<String> positions(List<String> places) {
        List<String> order = here.plan().flatMap(plan -> plan.script().site())
                .map(site -> site.positions().stream().map(position -> position.name()).toList()).orElse(List.of());
        Set<String> positions = new LinkedHashSet<>();
        collect(places, order, new HashSet<>(), positions);
        return List.copyOf(positions);
    }

    /** @param groups those that were looked into already: while they are written, groups may well go round in a circle */
    private void collect(List<String> places, List<String> order, Set<String> groups, Set<String> positions) {
        for (int i = 0; i < places.size(); i++) {
            String place = places.get(i);
            if (place.equals("all")) {
                positions.addAll(order);
            } else if (place.equals("..") && i > 0 && i + 1 < places.size()) {
                int from = order.indexOf(places.get(i - 1));
                int to = order.indexOf(places.get(i + 1));
                if (from >= 0 && to >= from) {
                    positions.addAll(order.subList(from, to + 1));
                }
            } else if (order.contains(place)) {
                positions.add(place);
            } else if (groups.add(place)) {
                here.names().map(names -> names.in(Space.PLACE).get(place)).filter(GroupDef.class::isInstance).map(GroupDef.class::cast)
                        .ifPresent(group -> collect(members(group), order, groups, positions));
            }
        }
    }

    private static List<String> members(GroupDef group) {
        return group.getPlaces() == null ? List.of() : List.of(Sources.text(group.getPlaces()).replace("^", "").replace("..", " .. ").split("[\\s,]+"));
    }
}
