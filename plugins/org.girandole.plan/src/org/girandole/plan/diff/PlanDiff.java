package org.girandole.plan.diff;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.EnumMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.stream.Collectors;
import org.girandole.plan.CheckedPlan;
import org.girandole.plan.Finding;
import org.girandole.plan.Plan;
import org.girandole.plan.PlannedCue;
import org.girandole.plan.Severity;
import org.girandole.plan.script.Waiver;

/**
 * Everything that changed between two plans.
 *
 * @param cues in the order of the new plan, removed ones first
 */
public record PlanDiff(List<CueChange> cues, List<FindingChange> findings, List<WaiverChange> waivers) {
    public PlanDiff {
        cues = List.copyOf(cues);
        findings = List.copyOf(findings);
        waivers = List.copyOf(waivers);
    }

    /** Compares two plans with their findings. */
    public static PlanDiff between(CheckedPlan before, CheckedPlan after) {
        return new PlanDiff(cueChanges(before.plan(), after.plan()), findingChanges(before.findings(), after.findings()),
                waiverChanges(before.plan().script().waivers(), after.plan().script().waivers()));
    }

    /** Whether the two plans fire the same things the same way and have the same findings. Places in the script do not count. */
    public boolean isEmpty() {
        return findings.isEmpty() && waivers.isEmpty() && cues.stream().noneMatch(PlanDiff::matters);
    }

    /**
     * Whether anything that bears on safety changed: a new or changed error or warning, any waiver, or any cue that fires, flies or
     * is loaded differently.
     */
    public boolean touchesSafety() {
        return !waivers.isEmpty()
                || findings.stream().anyMatch(change -> change.finding().severity() != Severity.INFO)
                || cues.stream().anyMatch(PlanDiff::matters);
    }

    /** Whether a change of a cue is noticed by audience or crew. A new number alone is not: numbers follow the order of firing. */
    public static boolean matters(CueChange change) {
        if (!(change instanceof CueChange.Changed changed)) {
            return true;
        }
        return changed.values().keySet().stream()
                .anyMatch(aspect -> aspect != Aspect.NUMBER && aspect.noticedBy() != Aspect.Audience.NOBODY && changed.really(aspect));
    }

    /**
     * The cues of the new plan, made from those of the old one and this difference alone.
     *
     * @param before the cues that were compared
     * @return in firing order
     * @throws IllegalArgumentException when a changed or removed cue is not among them
     */
    public List<PlannedCue> apply(List<PlannedCue> before) {
        Map<String, PlannedCue> result = new LinkedHashMap<>();
        before.forEach(cue -> result.put(cue.key(), cue));
        List<PlannedCue> changedCues = new ArrayList<>();
        for (CueChange change : cues) {
            if (change instanceof CueChange.Removed gone) {
                require(result.remove(gone.cue().key()), gone.cue().key());
            } else if (change instanceof CueChange.Changed changed) {
                CueDraft draft = new CueDraft(require(result.remove(changed.before().key()), changed.before().key()));
                changed.values().forEach(draft::set);
                changedCues.add(draft.cue());
            } else {
                changedCues.add(change.cue());
            }
        }
        changedCues.forEach(cue -> result.put(cue.key(), cue));
        return result.values().stream().sorted(Comparator.comparingInt(PlannedCue::number)).toList();
    }

    private static PlannedCue require(PlannedCue cue, String key) {
        if (cue == null) {
            throw new IllegalArgumentException("the plan has no cue '" + key + "'; this difference was made from another plan");
        }
        return cue;
    }

    private static List<CueChange> cueChanges(Plan before, Plan after) {
        CueMatching matching = new CueMatching(before, after);
        Movements movements = new Movements(before, after);
        List<CueChange> changes = new ArrayList<>();
        matching.removed().forEach(cue -> changes.add(new CueChange.Removed(cue)));
        for (PlannedCue now : after.cues()) {
            PlannedCue old = matching.oldOf(now);
            if (old == null) {
                changes.add(new CueChange.Added(now));
            } else if (!old.equals(now)) {
                changes.add(new CueChange.Changed(old, now, differingAspects(old, now), movements.of(old, now)));
            }
        }
        return changes;
    }

    private static Map<Aspect, Object> differingAspects(PlannedCue old, PlannedCue now) {
        Map<Aspect, Object> values = new EnumMap<>(Aspect.class);
        for (Aspect aspect : Aspect.values()) {
            if (!Objects.equals(aspect.of(old), aspect.of(now))) {
                values.put(aspect, aspect.of(now));
            }
        }
        return values;
    }

    private static List<FindingChange> findingChanges(List<Finding> before, List<Finding> after) {
        Map<List<Object>, List<Finding>> old = before.stream()
                .collect(Collectors.groupingBy(PlanDiff::topic, LinkedHashMap::new, Collectors.toCollection(ArrayList::new)));
        List<FindingChange> changes = new ArrayList<>();
        for (Finding now : after) {
            List<Finding> candidates = old.getOrDefault(topic(now), List.of());
            if (candidates.isEmpty()) {
                changes.add(new FindingChange.New(now));
                continue;
            }
            Finding was = candidates.stream().filter(f -> Bare.equal(f, now)).findFirst().orElse(candidates.get(0));
            candidates.remove(was);
            if (!sameWords(was, now)) {
                changes.add(new FindingChange.Changed(was, now));
            }
        }
        old.values().stream().flatMap(List::stream).forEach(gone -> changes.add(new FindingChange.Gone(gone)));
        return changes;
    }

    private static List<Object> topic(Finding finding) {
        return List.of(finding.rule(), finding.subject());
    }

    private static boolean sameWords(Finding a, Finding b) {
        return a.found().equals(b.found()) && a.allowed().equals(b.allowed()) && a.severity() == b.severity()
                && Bare.equal(a.waiver(), b.waiver());
    }

    private static List<WaiverChange> waiverChanges(List<Waiver> before, List<Waiver> after) {
        Map<List<Object>, List<Waiver>> old = before.stream()
                .collect(Collectors.groupingBy(PlanDiff::scope, LinkedHashMap::new, Collectors.toCollection(ArrayList::new)));
        List<WaiverChange> changes = new ArrayList<>();
        for (Waiver now : after) {
            List<Waiver> candidates = old.getOrDefault(scope(now), List.of());
            if (candidates.isEmpty()) {
                changes.add(new WaiverChange.Added(now));
                continue;
            }
            Waiver was = candidates.remove(0);
            if (!Bare.equal(was, now)) {
                changes.add(new WaiverChange.Changed(was, now));
            }
        }
        old.values().stream().flatMap(List::stream).forEach(gone -> changes.add(new WaiverChange.Removed(gone)));
        return changes;
    }

    private static List<Object> scope(Waiver waiver) {
        return List.of(waiver.rule(), waiver.subject(), waiver.position());
    }
}
