package org.girandole.plan.rules;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.girandole.plan.Finding;
import org.girandole.plan.Plan;
import org.girandole.plan.Severity;
import org.girandole.plan.Subject;
import org.girandole.plan.script.Waiver;

/**
 * The waivers of a script against what was found. A waiver fits a finding of its rule if its subject is one of the finding's names
 * and its position the finding's only position; what it leaves out fits everything. The day that counts is the show's.
 */
final class Waivers {
    static final RuleInfo EXPIRED = new RuleInfo("waiver-expired", RuleInfo.Family.HOUSEKEEPING, Severity.ERROR,
            "A waiver does not reach to the day of the show.",
            "Somebody agreed to a risk until a day. After it nobody has agreed.",
            "the script's waiver and the day of the show");
    static final RuleInfo UNUSED = new RuleInfo("waiver-unused", RuleInfo.Family.HOUSEKEEPING, Severity.WARNING,
            "A waiver fits nothing that was found.",
            "Either the risk is gone and the paper can go too, or it was meant for something else that now stands unwaived.",
            "the script's waiver");

    private final Optional<LocalDate> day;
    private final List<Waiver> all;
    private final Map<String, List<Waiver>> byRule = new HashMap<>();
    private final Set<Waiver> used = new LinkedHashSet<>();

    Waivers(Plan plan) {
        day = plan.script().show().date();
        all = plan.script().waivers();
        all.forEach(waiver -> byRule.computeIfAbsent(waiver.rule(), k -> new ArrayList<>()).add(waiver));
    }

    /** The finding, waived if somebody agreed to it for that day. */
    Finding apply(Finding finding) {
        Optional<Waiver> agreed = Optional.empty();
        if (Checker.waivable(finding.rule()).isEmpty()) {
            return finding;
        }
        for (Waiver waiver : byRule.getOrDefault(finding.rule(), List.of())) {
            if (fits(waiver, finding.subject())) {
                used.add(waiver);
                if (agreed.isEmpty() && reaches(waiver)) {
                    agreed = Optional.of(waiver);
                }
            }
        }
        return agreed.isEmpty() ? finding : new Finding(finding.rule(), finding.severity(), finding.message(), finding.found(),
                finding.allowed(), finding.basis(), finding.remedy(), finding.source(), finding.subject(), finding.data(), agreed);
    }

    /** What is wrong with the waivers themselves, once all findings have been seen. */
    List<Finding> findings() {
        Findings expired = new Findings(EXPIRED, EXPIRED.severity());
        Findings unused = new Findings(UNUSED, UNUSED.severity());
        for (Waiver waiver : all) {
            if (!reaches(waiver)) {
                expired(waiver, expired);
            }
            if (!used.contains(waiver)) {
                unused(waiver, unused);
            }
        }
        List<Finding> both = new ArrayList<>(expired.all());
        both.addAll(unused.all());
        return both;
    }

    private static boolean fits(Waiver waiver, Subject subject) {
        boolean names = waiver.subject().map(name -> subject.names().contains(name)).orElse(true);
        return names && waiver.position().map(position -> subject.positions().equals(List.of(position))).orElse(true);
    }

    /** Whether it holds on the day of the show. Without a day nobody can say so, and then it does not. */
    private boolean reaches(Waiver waiver) {
        return waiver.until().isEmpty() || day.isPresent() && !waiver.until().get().isBefore(day.get());
    }

    private void expired(Waiver waiver, Findings out) {
        LocalDate until = waiver.until().orElseThrow();
        String when = day.map(LocalDate::toString).orElse("a day the script does not give");
        out.report("The waiver of " + words(waiver) + " by " + waiver.by() + " holds until " + until + ", the show is on " + when)
                .found("until " + until, day.map(d -> d + " or later").orElse("a show with a date"))
                .remedy(day.isPresent() ? "ask " + waiver.by() + " again and write the new date, or mend what was waived"
                        : "give the show its date")
                .about(subject(waiver)).at(waiver.source());
    }

    private void unused(Waiver waiver, Findings out) {
        String why;
        String remedy;
        if (Checker.waivable(waiver.rule()).isPresent()) {
            why = "fits nothing that was found";
            remedy = "take it out, or correct its subject or position";
        } else if (Rules.infos().stream().anyMatch(info -> info.id().equals(waiver.rule()))) {
            why = "cannot hold: what could not be planned, and what is wrong with waivers and settings, cannot be waived";
            remedy = "mend what " + waiver.rule() + " says";
        } else {
            why = "names no rule that can be waived";
            remedy = Nearest.of(waiver.rule()).map(id -> "did you mean " + id + "?").orElse("look the id up in the list of rules");
        }
        out.report("The waiver of " + words(waiver) + " by " + waiver.by() + " " + why)
                .found("no finding of " + words(waiver), "at least one")
                .remedy(remedy)
                .about(subject(waiver)).at(waiver.source());
    }

    private static String words(Waiver waiver) {
        return waiver.rule() + waiver.subject().map(name -> " for " + name).orElse("")
                + waiver.position().map(name -> " at " + name).orElse("");
    }

    private static Subject subject(Waiver waiver) {
        return new Subject(waiver.subject().stream().toList(), waiver.position().stream().toList());
    }
}
