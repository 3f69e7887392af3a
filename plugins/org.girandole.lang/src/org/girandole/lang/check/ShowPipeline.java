package org.girandole.lang.check;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.eclipse.xtext.parser.ParseException;
import org.girandole.lang.LanguageRules;
import org.girandole.lang.LoadedShow;
import org.girandole.lang.ShowLoader;
import org.girandole.lang.files.ProjectRoot;
import org.girandole.plan.CheckedPlan;
import org.girandole.plan.Finding;
import org.girandole.plan.Plan;
import org.girandole.plan.Severity;
import org.girandole.plan.Subject;
import org.girandole.plan.rules.Checker;
import org.girandole.plan.rules.Rule;
import org.girandole.plan.rules.RuleInfo;
import org.girandole.plan.rules.Rules;
import org.girandole.plan.schedule.Planner;
import org.girandole.plan.script.SourceRef;

/** Reads, plans and checks shows, any number of them, one after the other. */
public final class ShowPipeline {
    /** A file that holds no show can be read, but there is nothing to plan: that must not look like a clean show. */
    public static final RuleInfo NO_SHOW = new RuleInfo("no-show", RuleInfo.Family.LANGUAGE, Severity.INFO,
            "A file without a show", "only its language was checked; a part used by a show is checked with that show",
            "the language reference");

    /** The parser, like the crew, loses count at some depth. */
    public static final RuleInfo NESTED_TOO_DEEP = new RuleInfo("nested-too-deep", RuleInfo.Family.LANGUAGE, Severity.ERROR,
            "Blocks that stand inside each other too deep to be read", "nothing of the script is in the show", "the language reference");

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
     * Checks a script from disk.
     *
     * @param root the project folder; nothing outside of it is read
     */
    public CheckedShow check(Path script, Path root) {
        try {
            return check(loader.load(script, root));
        } catch (StackOverflowError e) {
            return nestedTooDeep(script, root);
        } catch (ParseException e) {
            if (overflowed(e)) {
                return nestedTooDeep(script, root);
            }
            throw e;
        }
    }

    /** Checks a script that was read already. */
    public static CheckedShow check(LoadedShow loaded) {
        if (loaded.script().isEmpty()) {
            List<Finding> findings = new ArrayList<>(loaded.problems());
            if (!loaded.hasErrors()) {
                findings.add(noShow(loaded.file()));
            }
            return new CheckedShow(loaded, Optional.empty(), sorted(findings));
        }
        Plan plan = new Planner().plan(loaded.script().get());
        List<Finding> findings = new ArrayList<>(loaded.problems());
        findings.addAll(Checker.check(plan).findings());
        List<Finding> all = sorted(findings);
        return new CheckedShow(loaded, Optional.of(new CheckedPlan(plan, all)), all);
    }

    /** Everything that a check can find: the rules of the language and those of the plan. */
    public static List<RuleInfo> rules() {
        List<RuleInfo> rules = new ArrayList<>(LanguageRules.ALL);
        rules.add(NO_SHOW);
        rules.add(NESTED_TOO_DEEP);
        Rules.all().stream().map(Rule::info).forEach(rules::add);
        return List.copyOf(rules);
    }

    private static List<Finding> sorted(List<Finding> findings) {
        return findings.stream().sorted(ORDER).toList();
    }

    private static boolean overflowed(Throwable failure) {
        for (Throwable cause = failure; cause != null; cause = cause.getCause()) {
            if (cause instanceof StackOverflowError) {
                return true;
            }
        }
        return false;
    }

    private static CheckedShow nestedTooDeep(Path script, Path root) {
        String file = ProjectRoot.relative(root.toAbsolutePath().normalize(), script.toAbsolutePath().normalize());
        Finding finding = new Finding(NESTED_TOO_DEEP.id(), NESTED_TOO_DEEP.severity(),
                "Blocks of this script, or of a file that it uses, stand inside each other too deep to be read",
                "thousands of blocks inside each other", "a few blocks inside each other", NESTED_TOO_DEEP.basis(),
                "close blocks with '}' where they end", new SourceRef(file, 1, 1, 1), Subject.SHOW, Map.of(), Optional.empty());
        LoadedShow loaded = new LoadedShow(file, Optional.empty(), List.of(finding), List.of());
        return new CheckedShow(loaded, Optional.empty(), List.of(finding));
    }

    private static Finding noShow(String file) {
        return new Finding(NO_SHOW.id(), NO_SHOW.severity(), "This file has no show, so there was nothing to plan or to release",
                "no show block", "a block such as: show Harbour \"Harbour night\" { }", NO_SHOW.basis(),
                "check the script of the show that uses this file", new SourceRef(file, 1, 1, 1), Subject.SHOW, Map.of(),
                Optional.empty());
    }
}
