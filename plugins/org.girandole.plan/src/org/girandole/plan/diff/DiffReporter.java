package org.girandole.plan.diff;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;
import java.util.stream.Collectors;
import org.girandole.plan.CheckedPlan;
import org.girandole.plan.Finding;
import org.girandole.plan.PlannedCue;
import org.girandole.plan.Times;
import org.girandole.plan.script.Waiver;

/** Puts a difference into words for the second pyrotechnician: what the audience, the crew and the authority would notice. */
public final class DiffReporter {
    private final PlanDiff diff;
    private final CheckedPlan before;
    private final CheckedPlan after;

    private DiffReporter(PlanDiff diff, CheckedPlan before, CheckedPlan after) {
        this.diff = diff;
        this.before = before;
        this.after = after;
    }

    /** The report of a difference between these two plans. */
    public static DiffReport report(PlanDiff diff, CheckedPlan before, CheckedPlan after) {
        return new DiffReporter(diff, before, after).report();
    }

    private DiffReport report() {
        List<DiffReport.Part> parts = new ArrayList<>();
        addPart(parts, "For the audience", audience());
        addPart(parts, "For the crew", hardware());
        addPart(parts, "For safety", safety());
        return new DiffReport(title(before), title(after), headline(), parts);
    }

    private static void addPart(List<DiffReport.Part> parts, String title, List<DiffReport.Entry> entries) {
        if (!entries.isEmpty()) {
            parts.add(new DiffReport.Part(title, entries));
        }
    }

    private static String title(CheckedPlan plan) {
        return plan.plan().script().show().label() + ", stamp " + plan.plan().stamp().printed();
    }

    private String headline() {
        if (diff.isEmpty()) {
            return "Nothing that audience or crew would notice has changed, and the findings are the same.";
        }
        long added = diff.cues().stream().filter(CueChange.Added.class::isInstance).count();
        long removed = diff.cues().stream().filter(CueChange.Removed.class::isInstance).count();
        long moved = changed().stream().filter(change -> change.movement().isPresent()).count();
        long graver = diff.findings().stream().filter(FindingChange.New.class::isInstance).count();
        long gone = diff.findings().stream().filter(FindingChange.Gone.class::isInstance).count();
        return "%s added, %s removed, %s moved in time; %s new, %s gone.".formatted(cues(added), cues(removed), cues(moved),
                count(graver, "finding", "findings"), count(gone, "finding", "findings"));
    }

    private List<DiffReport.Entry> audience() {
        List<DiffReport.Entry> entries = new ArrayList<>();
        addCues(entries, "is no more", "are no more", diff.cues().stream()
                .filter(CueChange.Removed.class::isInstance).map(CueChange::cue).toList());
        addCues(entries, "is new", "are new", diff.cues().stream()
                .filter(CueChange.Added.class::isInstance).map(CueChange::cue).toList());
        changed().stream().filter(change -> change.movement().isPresent())
                .collect(Collectors.groupingBy(change -> change.movement().orElseThrow(), LinkedHashMap::new, Collectors.toList()))
                .forEach((movement, group) -> entries.add(movementEntry(movement, group)));
        addChanges(entries, Aspect.EFFECT, change -> change.before().label() + " before, now " + change.cue().label());
        addChanges(entries, Aspect.CHAIN, change -> change.before().label() + " before, now " + change.cue().label());
        addChanges(entries, Aspect.POSITION, change -> change.before().position() + " before, now " + change.cue().position());
        addChanges(entries, Aspect.AIM, change -> degrees(change.before()) + " before, now " + degrees(change.cue()));
        addChanges(entries, Aspect.SOUNDTRACK, change -> change.before().soundtrack() + " before, now " + change.cue().soundtrack());
        return entries;
    }

    private List<DiffReport.Entry> hardware() {
        List<DiffReport.Entry> entries = new ArrayList<>();
        addChanges(entries, Aspect.PIN, change -> pin(change.before()) + " before, now " + pin(change.cue()));
        addChanges(entries, Aspect.TUBE, change -> tube(change.before()) + " before, now " + tube(change.cue()));
        addChanges(entries, Aspect.LOT, change -> "lot " + change.before().lot().orElse("none") + " before, now "
                + change.cue().lot().orElse("none"));
        addChanges(entries, Aspect.CIRCUIT, change -> loop(change.before()) + " before, now " + loop(change.cue()));
        addChanges(entries, Aspect.SLOT, change -> "slot " + change.before().slot() + " before, now " + change.cue().slot());
        return entries;
    }

    private List<DiffReport.Entry> safety() {
        List<DiffReport.Entry> entries = new ArrayList<>();
        addFindings(entries, "New", FindingChange.New.class);
        addFindings(entries, "Gone", FindingChange.Gone.class);
        for (FindingChange change : diff.findings()) {
            if (change instanceof FindingChange.Changed changed) {
                Finding was = changed.before();
                Finding now = changed.finding();
                entries.add(new DiffReport.Entry("Changed: " + line(now),
                        List.of("before: " + was.found() + words(was), "now: " + now.found() + words(now))));
            }
        }
        for (WaiverChange change : diff.waivers()) {
            String verb = change instanceof WaiverChange.Added ? "New waiver" : change instanceof WaiverChange.Removed
                    ? "Waiver taken out" : "Waiver changed";
            entries.add(new DiffReport.Entry(verb + ": " + waiver(change.waiver()),
                    change instanceof WaiverChange.Changed changed ? List.of("before: " + waiver(changed.before())) : List.of()));
        }
        double chargeBefore = chargeKg(before);
        double chargeAfter = chargeKg(after);
        if (Math.abs(chargeAfter - chargeBefore) > 5e-7) {
            entries.add(new DiffReport.Entry(String.format(Locale.ROOT,
                    "Net explosive content of all that is fired: %.3f kg before, %.3f kg now (items whose charge is known).",
                    chargeBefore, chargeAfter), List.of()));
        }
        return entries;
    }

    private static double chargeKg(CheckedPlan plan) {
        return plan.plan().cues().stream().mapToDouble(cue -> cue.pieces() * cue.effect().chargeKg().orElse(0.0)).sum();
    }

    private void addFindings(List<DiffReport.Entry> entries, String verb, Class<? extends FindingChange> type) {
        diff.findings().stream().filter(type::isInstance).map(FindingChange::finding)
                .collect(Collectors.groupingBy(Finding::rule, LinkedHashMap::new, Collectors.toList()))
                .forEach((rule, list) -> entries.add(list.size() == 1
                        ? new DiffReport.Entry(verb + ": " + line(list.get(0)), List.of())
                        : new DiffReport.Entry(verb + ": " + count(list.size(), "finding", "findings") + " of " + rule,
                                list.stream().map(DiffReporter::line).toList())));
    }

    private static String line(Finding finding) {
        return (finding.waived() ? "waived " : "") + finding.severity().word() + " " + finding.rule() + ": " + finding.message();
    }

    private static String words(Finding finding) {
        return ", " + finding.severity().word() + (finding.waived() ? ", waived" : "");
    }

    private static String waiver(Waiver waiver) {
        return waiver.rule() + waiver.subject().map(s -> " for " + s).orElse("") + waiver.position().map(p -> " at " + p).orElse("")
                + ", because \"" + waiver.because() + "\", by " + waiver.by()
                + waiver.until().map(date -> ", until " + date).orElse("");
    }

    private static DiffReport.Entry movementEntry(Movement movement, List<CueChange.Changed> group) {
        StringBuilder text = new StringBuilder(cues(group.size()));
        if (movement.fireUs() == 0) {
            text.append(group.size() == 1 ? " fires" : " fire").append(" at the same moment as before");
        } else {
            text.append(group.size() == 1 ? " fires " : " fire ").append(Times.seconds(Math.abs(movement.fireUs())))
                    .append(movement.fireUs() < 0 ? " earlier" : " later");
        }
        text.append(seenWords(movement.seenUs(), group.size() == 1));
        text.append(": ").append(movement.causes().stream().map(cause -> cause(cause, group.get(0)))
                .collect(Collectors.joining("; "))).append('.');
        return new DiffReport.Entry(text.toString(), group.stream().map(DiffReporter::movedLine).toList());
    }

    private static String seenWords(long us, boolean one) {
        if (us == 0) {
            return one ? " and is seen when it was before" : " and are seen when they were before";
        }
        return " and " + (one ? "is" : "are") + " seen " + Times.seconds(Math.abs(us)) + (us < 0 ? " earlier" : " later");
    }

    private static String cause(Movement.Cause cause, CueChange.Changed example) {
        String name = cause.what().isEmpty() ? "" : " (" + cause.what() + ")";
        String values = switch (cause.kind()) {
            case LOT, CATALOGUE, ESTIMATE -> ", " + Times.seconds(rise(example.before())) + " before, now "
                    + Times.seconds(rise(example.cue()));
            default -> "";
        };
        return cause.kind().words() + name + values + ", " + signed(cause.byUs());
    }

    private static long rise(PlannedCue cue) {
        return cue.timing().riseUs() - cue.timing().leadUs();
    }

    private static String signed(long us) {
        return (us > 0 ? "+" : "") + Times.seconds(us);
    }

    private static String movedLine(CueChange.Changed change) {
        return describe(change.cue()) + ": fires " + Times.exactClock(change.before().timing().fireUs()) + " before, now "
                + Times.exactClock(change.cue().timing().fireUs());
    }

    private void addCues(List<DiffReport.Entry> entries, String one, String many, List<PlannedCue> list) {
        if (!list.isEmpty()) {
            entries.add(new DiffReport.Entry(cues(list.size()) + " " + (list.size() == 1 ? one : many) + ".",
                    list.stream().map(cue -> describe(cue) + ", seen " + Times.exactClock(cue.timing().seenUs())).toList()));
        }
    }

    private void addChanges(List<DiffReport.Entry> entries, Aspect aspect, Function<CueChange.Changed, String> words) {
        Map<String, List<String>> byWords = new LinkedHashMap<>();
        for (CueChange.Changed change : changed()) {
            if (change.really(aspect)) {
                byWords.computeIfAbsent(words.apply(change), k -> new ArrayList<>()).add(describe(change.cue()));
            }
        }
        byWords.forEach((text, list) -> entries.add(new DiffReport.Entry("The " + aspect.word() + " of "
                + (list.size() == 1 ? list.get(0) : cues(list.size())) + " is another: " + text + ".",
                list.size() == 1 ? List.of() : list)));
    }

    private List<CueChange.Changed> changed() {
        return diff.cues().stream().filter(CueChange.Changed.class::isInstance).map(CueChange.Changed.class::cast).toList();
    }

    private static String describe(PlannedCue cue) {
        return "cue " + cue.number() + " " + cue.label() + " at " + cue.position()
                + (cue.section().isEmpty() ? "" : " in " + cue.section());
    }

    private static String degrees(PlannedCue cue) {
        return String.format(Locale.ROOT, "%.1f° towards %.0f°", cue.aim().tiltDeg(), cue.aim().bearingDeg());
    }

    private static String pin(PlannedCue cue) {
        return cue.pin().map(p -> p.module() + "/" + p.pin()).orElse("none");
    }

    private static String tube(PlannedCue cue) {
        return cue.tube().map(t -> t.rack() + "/" + t.tube()).orElse("none");
    }

    private static String loop(PlannedCue cue) {
        Optional<PlannedCue.Circuit> circuit = cue.circuit();
        return circuit.map(c -> String.format(Locale.ROOT, "%.2f ohm on %.1f m of lead", c.loopOhm(), c.leadM()))
                .orElse("no loop");
    }

    private static String cues(long n) {
        return count(n, "cue", "cues");
    }

    private static String count(long n, String one, String many) {
        return n + " " + (n == 1 ? one : many);
    }
}
