package org.girandole.lang.check;

import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import org.girandole.lang.LanguageRules;
import org.girandole.lang.LoadedShow;
import org.girandole.plan.CheckedPlan;
import org.girandole.plan.Finding;
import org.girandole.plan.Severity;

/**
 * What came of checking a script.
 *
 * @param plan empty when the script has no show, or could not be read; its findings are all of {@code findings}
 * @param findings of the language and of the plan, the gravest first
 */
public record CheckedShow(LoadedShow loaded, Optional<CheckedPlan> plan, List<Finding> findings) {
    public CheckedShow {
        findings = List.copyOf(findings);
    }

    /**
     * The plan of a script that could be read whole, for all that compares or accounts: a cue that could not be read would look like one that
     * was taken out, or be missing.
     */
    public Optional<CheckedPlan> wholePlan() {
        return loaded.hasErrors() ? Optional.empty() : plan;
    }

    /**
     * The first thing that keeps the script from being read whole, with its place: {@code stock.show:12: …}. What cannot be parsed comes before
     * what follows from it, such as names that are not found.
     */
    public Optional<String> tornBy() {
        return loaded.problems().stream().filter(problem -> problem.severity() == Severity.ERROR)
                .min(Comparator.comparing(problem -> !problem.rule().equals(LanguageRules.SYNTAX.id())))
                .map(problem -> problem.source().file() + ":" + problem.source().line() + ": " + problem.message());
    }

    /** Whether anything of this severity, or graver, is left that nobody agreed to. */
    public boolean failsOn(Severity severity) {
        return findings.stream().anyMatch(f -> !f.waived() && f.severity().compareTo(severity) <= 0);
    }
}
