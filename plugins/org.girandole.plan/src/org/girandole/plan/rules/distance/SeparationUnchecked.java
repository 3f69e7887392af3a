package org.girandole.plan.rules.distance;

import java.util.Optional;
import java.util.stream.Collectors;
import org.girandole.physics.separation.DistanceTable;
import org.girandole.plan.Plan;
import org.girandole.plan.Severity;
import org.girandole.plan.fallout.Nonsense;
import org.girandole.plan.rules.Findings;
import org.girandole.plan.rules.RuleInfo;
import org.girandole.plan.rules.SharingRule;
import org.girandole.plan.rules.Workings;
import org.girandole.plan.script.Site;
import org.girandole.plan.script.SourceRef;

/** A show whose distances to the audience could not be computed, and why. */
public final class SeparationUnchecked implements SharingRule {
    private static final RuleInfo INFO = new RuleInfo("separation-unchecked", RuleInfo.Family.DISTANCE, Severity.ERROR,
            "The distances to the audience were not checked.",
            "Distance is what keeps the audience alive when everything else goes wrong. A show is not clean as long as it is "
                    + "unknown.",
            "the authority having jurisdiction sets the distances; no show is without them");

    @Override
    public RuleInfo info() {
        return INFO;
    }

    @Override
    public void check(Workings workings, Findings out) {
        Plan plan = workings.plan();
        if (plan.cues().isEmpty()) {
            return;
        }
        Optional<String> table = plan.script().show().separation();
        String names = plan.script().distanceTables().stream().map(DistanceTable::name).collect(Collectors.joining(", "));
        if (table.isEmpty()) {
            report(plan, out, "no distance table is named", "one of " + names,
                    "name the table that your authority asks for, such as 'separation by UsTable'");
        } else if (plan.script().separationTable().isEmpty()) {
            report(plan, out, "there is no distance table " + table.get(), "one of " + names, "name one of these tables, or write it as 'distances " + table.get() + " { … }'");
        }
        Optional<Site> site = plan.script().site();
        boolean refused = site.filter(s -> s.refused().stream().anyMatch(part -> part.part() == Site.Part.AUDIENCE)).isPresent();
        if (site.isEmpty() || site.get().audience().isEmpty() && !refused) {
            report(plan, out, site.isEmpty() ? "the show has no site" : "site " + site.get().name() + " does not say where the audience is",
                    "an audience line on the site", "add 'audience' and the points of the line it stands on to the site");
        }
        Ground ground = Ground.of(workings);
        ground.unreadable().stream().filter(shape -> shape.named().part() != Site.Part.BOUNDARY)
                .forEach(shape -> report(out, shape.named().name(), shape.why(), shape.named().part() == Site.Part.AUDIENCE
                        ? "the points of the line it stands on" : "corners in order around an area", "correct the points", shape.named().source()));
        Fired.of(workings).uncomputed().forEach(why -> report(why, out));
    }

    private static void report(Nonsense.Why why, Findings out) {
        out.report("No distance " + why.where() + " was computed: " + why.clause())
                .found(why.clause(), why.allowed())
                .remedy(why.remedy())
                .about(why.subject())
                .at(why.source());
    }

    private static void report(Plan plan, Findings out, String why, String allowed, String remedy) {
        report(out, "the audience", why, allowed, remedy, plan.script().show().source());
    }

    private static void report(Findings out, String to, String why, String allowed, String remedy, SourceRef source) {
        out.report("The distances from what is fired to " + to + " were not checked: " + why)
                .found(why, allowed)
                .remedy(remedy + "; or measure on the site plan, and write down in a waiver who agreed")
                .at(source);
    }
}
