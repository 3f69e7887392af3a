package org.girandole.plan.rules.timing;

import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.girandole.plan.Plan;
import org.girandole.plan.PlannedCue;
import org.girandole.plan.Severity;
import org.girandole.plan.Subject;
import org.girandole.plan.rules.Basis;
import org.girandole.plan.rules.Cues;
import org.girandole.plan.rules.Findings;
import org.girandole.plan.rules.Quantity;
import org.girandole.plan.rules.Rule;
import org.girandole.plan.rules.RuleInfo;
import org.girandole.plan.script.FiringSystem;
import org.girandole.plan.script.SourceRef;

/** A step of the firing system that swallows the show's tolerance, or that runs the shots of a chase together. */
public final class StepTooCoarse implements Rule {
    /** Half a step may use up one part in so many of what the show allows; the rest belongs to the effects. */
    static final long SHARE = 4;
    private static final RuleInfo INFO = new RuleInfo("step-too-coarse", RuleInfo.Family.TIMING, Severity.WARNING,
            "The firing system's step is too coarse for this show.",
            "Every cue is rounded to a step. A coarse step eats the tolerance that the shells need, and turns a fast chase into a clump.",
            "half a step may use a quarter of the show's 'sync within': " + Basis.COMMON_PRACTICE);

    @Override
    public RuleInfo info() {
        return INFO;
    }

    @Override
    public void check(Plan plan, Findings out) {
        plan.script().firingSystem().ifPresent(system -> system.stepUs().ifPresent(stepUs -> {
            againstTolerance(plan, system, stepUs, out);
            againstChases(plan, system, stepUs, out);
        }));
    }

    private static void againstTolerance(Plan plan, FiringSystem system, long stepUs, Findings out) {
        Optional<Long> within = plan.script().show().syncWithinUs();
        if (within.isPresent() && stepUs * SHARE > within.get() * 2) {
            long bestUs = within.get() * 2 / SHARE;
            out.report("Firing system " + system.name() + " fires in steps of " + Quantity.span(stepUs)
                    + ": half a step uses more than a quarter of the " + Quantity.span(within.get()) + " that the show allows")
                    .found("step " + Quantity.span(stepUs), "at most " + Quantity.span(bestUs))
                    .basis("half a step within a quarter of 'sync within " + Quantity.span(within.get()) + "': " + Basis.COMMON_PRACTICE)
                    .remedy("use a system with a step of " + Quantity.span(bestUs) + " or less, or allow 'sync within "
                            + Quantity.span(stepUs * SHARE / 2) + "'")
                    .about(Subject.of(system.name()))
                    .data(Map.of("stepUs", Long.toString(bestUs)))
                    .at(system.source());
        }
    }

    private static void againstChases(Plan plan, FiringSystem system, long stepUs, Findings out) {
        Map<Clump, Set<Long>> moments = new LinkedHashMap<>();
        Map<SourceRef, PlannedCue> clumped = new LinkedHashMap<>();
        for (PlannedCue cue : plan.cues()) {
            Clump clump = Clump.of(cue);
            Set<Long> seen = moments.computeIfAbsent(clump, k -> new LinkedHashSet<>());
            seen.add(cue.timing().seenUs());
            if (seen.size() > 1) {
                clumped.putIfAbsent(cue.source(), cue);
            }
        }
        clumped.forEach((source, cue) -> {
            long apartUs = spread(moments.get(Clump.of(cue)));
            out.report(cue.what() + " in turn: shots meant " + Quantity.span(apartUs) + " apart are fired together at "
                    + Quantity.moment(cue.timing().fireUs()))
                    .found(Quantity.span(apartUs) + " apart, step " + Quantity.span(stepUs), "at least " + Quantity.span(stepUs) + " apart")
                    .basis(Basis.script("step " + Quantity.span(stepUs) + " of firing system " + system.name(), system.source()))
                    .remedy("let the shots follow each other by " + Quantity.span(stepUs) + " or more")
                    .about(Cues.subject(cue))
                    .at(source);
        });
    }

    private static long spread(Set<Long> moments) {
        long first = moments.stream().mapToLong(Long::longValue).min().orElse(0);
        return moments.stream().mapToLong(Long::longValue).max().orElse(0) - first;
    }

    /** Shots of one line with the same delays: if they are fired together, only the step can have brought them together. */
    private record Clump(SourceRef source, String soundtrack, String what, long fireUs, long delayUs) {
        static Clump of(PlannedCue cue) {
            return new Clump(cue.source(), cue.soundtrack(), cue.what(), cue.timing().fireUs(),
                    cue.timing().riseUs() + cue.timing().soundUs());
        }
    }
}
