package org.girandole.plan.rules;

import java.util.ArrayList;
import java.util.Collection;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import org.girandole.plan.CheckedPlan;
import org.girandole.plan.Finding;
import org.girandole.plan.Plan;
import org.girandole.plan.fallout.FlightMemory;

/**
 * Runs every rule on a plan, raises the severities that the script raises, holds the waivers against what was found, and puts it all
 * in an order that depends on nothing but the script.
 */
public final class Checker {
    /** What the checker itself can find: about the script's settings and waivers. */
    static final List<RuleInfo> OWN = List.of(Settings.INFO, Waivers.EXPIRED, Waivers.UNUSED);

    private static final Comparator<Finding> ORDER = Comparator.comparing(Finding::severity)
            .thenComparing(Finding::source)
            .thenComparing(Finding::rule)
            .thenComparing(Finding::message)
            .thenComparing(finding -> String.join(",", finding.subject().positions()));

    private Checker() {
    }

    /** The plan with everything found about it, its own troubles included. */
    public static CheckedPlan check(Plan plan) {
        return check(plan, new FlightMemory());
    }

    /**
     * The same, sooner.
     *
     * @param flights what was flown for earlier checks; this one adds to it
     */
    public static CheckedPlan check(Plan plan, FlightMemory flights) {
        Workings workings = new Workings(plan, flights);
        // Fitted by all cores before the rules share these: a rule that waits for what another works out would keep one from working.
        workings.shells();
        List<Finding> found = new ArrayList<>(Rules.all().parallelStream().flatMap(rule -> found(rule, workings, true).stream()).toList());
        Settings settings = Settings.of(plan);
        found.addAll(settings.findings());
        Waivers waivers = new Waivers(plan);
        List<Finding> judged = new ArrayList<>();
        found.forEach(finding -> judged.add(waivers.apply(finding)));
        judged.addAll(plan.troubles());
        judged.addAll(waivers.findings());
        return new CheckedPlan(plan, judged.stream().map(settings::raise).sorted(ORDER).toList());
    }

    /** Rules share nothing that changes what they find, so that they can run side by side; the stream keeps their order. */
    private static List<Finding> found(Rule rule, Workings workings, boolean cures) {
        RuleInfo info = rule.info();
        Findings out = cures ? new Findings(info, info.severity()) : Findings.withoutCures(info, info.severity());
        rule.check(workings, out);
        return out.all();
    }

    /** What some rules find, held against the waivers; nothing else about the plan is looked at. */
    public static List<Finding> findings(Workings workings, Collection<Rule> rules) {
        return findings(workings, rules, true);
    }

    /** The same for trying what if: as many findings of the same rules about the same, but no remedies where these must be looked for. */
    public static List<Finding> findingsWithoutCures(Workings workings, Collection<Rule> rules) {
        return findings(workings, rules, false);
    }

    private static List<Finding> findings(Workings workings, Collection<Rule> rules, boolean cures) {
        Waivers waivers = new Waivers(workings.plan());
        return rules.stream().flatMap(rule -> found(rule, workings, cures).stream()).map(waivers::apply).sorted(ORDER).toList();
    }

    /** The rule of this id, if it is one whose findings can be waived. */
    static Optional<RuleInfo> waivable(String id) {
        return Rules.all().stream().map(Rule::info).filter(info -> info.id().equals(id)).findFirst();
    }
}
