package org.girandole.lang.check;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.CancellationException;
import java.util.function.BooleanSupplier;
import org.girandole.lang.LanguageRules;
import org.girandole.lang.LoadedShow;
import org.girandole.lang.ShowLoader;
import org.girandole.plan.CheckedPlan;
import org.girandole.plan.Finding;
import org.girandole.plan.Plan;
import org.girandole.plan.Severity;
import org.girandole.plan.Subject;
import org.girandole.plan.fallout.FlightMemory;
import org.girandole.plan.rules.Checker;
import org.girandole.plan.rules.RuleInfo;
import org.girandole.plan.rules.Rules;
import org.girandole.plan.schedule.Planner;
import org.girandole.plan.schedule.WiringMemory;
import org.girandole.plan.script.ShowScript;
import org.girandole.plan.script.SourceRef;

/** Reads, plans and checks shows, any number of them, one after the other. */
public final class ShowPipeline {
    /** A file that holds no show can be read, but there is nothing to plan: that must not look like a clean show. */
    public static final RuleInfo NO_SHOW = new RuleInfo("no-show", RuleInfo.Family.LANGUAGE, Severity.INFO,
            "A file without a show", "only its language was checked; a part used by a show is checked with that show",
            "the language reference");

    private static final Comparator<Finding> ORDER = Comparator.comparing(Finding::severity).thenComparing(Finding::source)
            .thenComparing(Finding::rule).thenComparing(Finding::message);

    private final ShowLoader loader;

    public ShowPipeline() {
        this(new ShowLoader());
    }

    /** For programs that have a loader already. */
    public ShowPipeline(ShowLoader loader) {
        this.loader = loader;
    }

    /**
     * Checks a script from disk, with the lock file beside it if there is one.
     *
     * @param root the project folder; nothing outside of it is read
     */
    public CheckedShow check(Path script, Path root) {
        return check(loader.load(script, root), script, root);
    }

    /** Checks a script that was read already, with the lock file beside it if there is one. */
    public static CheckedShow check(LoadedShow loaded, Path script, Path root) {
        return check(loaded, script, root, new FlightMemory(), new WiringMemory(), () -> false);
    }

    /**
     * The same, sooner, for whoever checks again and again.
     *
     * @param flights what was flown for earlier checks; this one adds to it
     * @param wirings how this show was wired for earlier checks; likewise
     * @param overtaken whether nobody wants the answer any more
     * @throws CancellationException when it was overtaken
     */
    public static CheckedShow check(LoadedShow loaded, Path script, Path root, FlightMemory flights, WiringMemory wirings,
            BooleanSupplier overtaken) {
        return check(loaded, loaded.script().map(show -> LockBeside.of(script, root, show.show())).orElse(LockBeside.NONE), flights, wirings,
                overtaken);
    }

    /** Checks a script that was read already, as if there were no lock file. */
    public static CheckedShow check(LoadedShow loaded) {
        return check(loaded, LockBeside.NONE, new FlightMemory(), new WiringMemory(), () -> false);
    }

    private static CheckedShow check(LoadedShow loaded, LockBeside lock, FlightMemory flights, WiringMemory wirings, BooleanSupplier overtaken) {
        if (loaded.script().isEmpty()) {
            List<Finding> findings = new ArrayList<>(loaded.problems());
            if (!loaded.hasErrors()) {
                findings.add(noShow(loaded.file()));
            }
            return new CheckedShow(loaded, Optional.empty(), sorted(findings));
        }
        ShowScript script = loaded.script().get();
        Plan plan = new Planner(wirings).plan(lock.input().map(script::withInput).orElse(script), lock.file());
        if (overtaken.getAsBoolean()) {
            throw new CancellationException();
        }
        List<Finding> findings = new ArrayList<>(loaded.problems());
        lock.trouble().ifPresent(findings::add);
        findings.addAll(Checker.check(plan, flights).findings());
        List<Finding> all = sorted(findings);
        return new CheckedShow(loaded, Optional.of(new CheckedPlan(plan, all)), all);
    }

    /** Everything that a check can find: the rules of the language and those of the plan. */
    public static List<RuleInfo> rules() {
        List<RuleInfo> rules = new ArrayList<>(LanguageRules.ALL);
        rules.add(NO_SHOW);
        rules.addAll(Rules.infos());
        return List.copyOf(rules);
    }

    private static List<Finding> sorted(List<Finding> findings) {
        return findings.stream().sorted(ORDER).toList();
    }

    private static Finding noShow(String file) {
        return new Finding(NO_SHOW.id(), NO_SHOW.severity(), "This file has no show, so there was nothing to plan or to release",
                "no show block", "a block such as: show Harbour \"Harbour night\" { }", NO_SHOW.basis(),
                "check the script of the show that uses this file", new SourceRef(file, 1, 1, 1), Subject.SHOW, Map.of(),
                Optional.empty());
    }
}
