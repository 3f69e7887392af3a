package org.girandole.plan.rules.distance;

import java.util.ArrayList;
import java.util.List;
import org.girandole.physics.separation.Change;
import org.girandole.physics.separation.Citation;
import org.girandole.physics.separation.DistanceTable;
import org.girandole.physics.separation.Modifier;
import org.girandole.physics.separation.Verification;
import org.girandole.physics.separation.Where;
import org.girandole.plan.Plan;
import org.girandole.plan.Severity;
import org.girandole.plan.rules.Findings;
import org.girandole.plan.rules.Quantity;
import org.girandole.plan.rules.RuleInfo;
import org.girandole.plan.rules.SharingRule;
import org.girandole.plan.rules.Workings;

/** Something fired nearer to a protected place than the show's distance table asks, times what the place asks. */
public final class Protect implements SharingRule {
    private static final RuleInfo INFO = new RuleInfo("protect", RuleInfo.Family.DISTANCE, Severity.ERROR,
            "Something is fired too near to a protected place.",
            "A fuel dock, a hospital or a dry wood turns one bad shell into a catastrophe.",
            "the distance table that the show names, times what the site asks for the place");

    @Override
    public RuleInfo info() {
        return INFO;
    }

    @Override
    public void check(Workings workings, Findings out) {
        Plan plan = workings.plan();
        Ground ground = Ground.of(workings);
        plan.script().separationTable()
                .ifPresent(table -> Distances.worst(workings, ground.protectedPlaces(), place -> times(table, place))
                        .forEach(worst -> worst.report(out, worst.place().name())));
    }

    /** The table with what the site asks for this place on top. */
    static DistanceTable times(DistanceTable table, Ground.Place place) {
        if (place.multiple() == 1) {
            return table;
        }
        List<Modifier> modifiers = new ArrayList<>(table.modifiers());
        String words = Quantity.number(place.multiple()) + " times the table's distance for " + place.name();
        modifiers.add(new Modifier(words, List.of(), List.of(), Where.EVERYWHERE, new Change.MultiplyBy(place.multiple()),
                new Citation("the script's site", "", Verification.OWN)));
        return new DistanceTable(table.name(), table.title(), table.document(), table.sectorDeg(), table.rules(), modifiers, table.notes());
    }
}
