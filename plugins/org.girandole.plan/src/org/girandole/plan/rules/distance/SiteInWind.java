package org.girandole.plan.rules.distance;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import org.girandole.plan.Finding;
import org.girandole.plan.Plan;
import org.girandole.plan.PlannedCue;
import org.girandole.plan.Severity;
import org.girandole.plan.rules.Checker;
import org.girandole.plan.rules.Rule;
import org.girandole.plan.rules.Workings;
import org.girandole.plan.script.Site;

/**
 * What the rules about distances find at each position in one wind, and how much wind of a direction a plan bears.
 *
 * @param plan the plan in that wind
 * @param findings errors of the rules about distances, waived ones included; a finding without a position is of every position
 */
public record SiteInWind(Plan plan, List<Finding> findings) {
    /** The strongest wind that is tried: in more nobody stands a rack up. */
    public static final double STRONGEST_MPS = 20;
    private static final Set<String> UNCHECKED = Set.of("separation-unchecked", "fallout-unchecked");
    private static final List<Rule> RULES = List.of(new SeparationUnchecked(), new Separation(), new Protect(), new FalloutUnchecked(),
            new FalloutOutside(), new BurstTooLow(), new PositionTooClose(), new PositionOutside());

    /** How a position fares. */
    public enum State {
        /** Nothing found. */
        CLEAN("clean"),
        /** Only what somebody agreed to in a waiver, in whatever wind that was. */
        WAIVED("waived"),
        /** Something found that nobody agreed to. */
        NOT_CLEAN("NOT"),
        /** Something could not be checked. */
        UNCHECKED("unchecked");

        private final String word;

        State(String word) {
            this.word = word;
        }

        /** The word for it in tables. */
        public String word() {
            return word;
        }
    }

    public SiteInWind {
        findings = List.copyOf(findings);
    }

    /** The plan in the wind of its site. */
    public static SiteInWind of(Workings workings) {
        return of(workings.plan(), Checker.findings(workings, RULES));
    }

    private static SiteInWind of(Plan plan, List<Finding> found) {
        return new SiteInWind(plan, found.stream().filter(finding -> finding.severity() == Severity.ERROR).toList());
    }

    /** The plan in wind from {@code fromDeg} (clockwise from north) at {@code speedMps}, without gusts; its findings say no cures. */
    static SiteInWind of(Workings workings, double fromDeg, double speedMps) {
        Workings blown = workings.inWind(Optional.of(new Site.Wind(fromDeg, speedMps, Optional.empty(), workings.plan().script().show().source())));
        return of(blown.plan(), Checker.findingsWithoutCures(blown, RULES));
    }

    /** Positions that something is fired from, in the order of the site; then those that the site does not have. */
    public static List<String> positions(Plan plan) {
        Set<String> used = new TreeSet<>();
        plan.cues().stream().map(PlannedCue::position).forEach(used::add);
        List<String> ordered = new ArrayList<>();
        plan.script().site().ifPresent(site -> site.positions().stream().map(Site.Position::name).filter(used::remove).forEach(ordered::add));
        ordered.addAll(used);
        return ordered;
    }

    /** Whether a finding says that something could not be checked. */
    public static boolean saysUnchecked(Finding finding) {
        return UNCHECKED.contains(finding.rule()) && !finding.waived();
    }

    /** What was found at a position, that of every position included. */
    public List<Finding> at(String position) {
        return findings.stream().filter(finding -> finding.subject().positions().isEmpty() || finding.subject().positions().contains(position))
                .toList();
    }

    /** How a position fares; what is unchecked comes before all else. */
    public State state(String position) {
        List<Finding> found = at(position);
        List<Finding> open = found.stream().filter(finding -> !finding.waived()).toList();
        if (open.stream().anyMatch(SiteInWind::saysUnchecked)) {
            return State.UNCHECKED;
        }
        return !open.isEmpty() ? State.NOT_CLEAN : found.isEmpty() ? State.CLEAN : State.WAIVED;
    }

    /** Why something could not be checked, in words; empty when all was. */
    public List<String> unchecked() {
        return findings.stream().filter(SiteInWind::saysUnchecked).map(Finding::message).distinct().toList();
    }

    /** The rules that find something here that was not agreed to, each once. */
    List<String> brokenAt(String position) {
        return at(position).stream().filter(finding -> !finding.waived()).map(Finding::rule).distinct().toList();
    }
}
