package org.girandole.cli;

import java.io.IOException;
import java.io.PrintWriter;
import java.io.UncheckedIOException;
import java.nio.file.Path;
import java.util.List;
import java.util.concurrent.Callable;
import org.girandole.lang.check.CheckedShow;
import org.girandole.lang.check.ShowPipeline;
import org.girandole.plan.CheckedPlan;
import org.girandole.plan.diff.DiffReporter;
import org.girandole.plan.diff.PlanDiff;
import org.girandole.sheets.diff.DiffFormat;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Spec;

/** Says what changed between two states of a show. */
@Command(name = "diff", mixinStandardHelpOptions = true, header = "Says what changed between two states of a show.",
        description = {"", "Compares what is planned, not the text: what the audience would notice and why, what the crew must load or wire"
                + " differently, which findings and waivers came and went.", ""},
        footer = {"", "Examples:",
                "  girandole diff last-week/my-show.show my-show.show",
                "  girandole diff --git HEAD~1 my-show.show",
                "  girandole diff --git main --output markdown my-show.show",
                "", "Exit code 0 says that nothing that bears on safety changed, 1 that something did."})
final class DiffCommand implements Callable<Integer> {
    @Spec
    private CommandSpec spec;
    @Parameters(arity = "1..2", paramLabel = "SCRIPT", description = "The old and the new script; with --git the new one alone.")
    private List<Path> scripts;
    @Option(names = "--git", paramLabel = "REV", description = "Compare with the script as it was in this revision of the git repository.")
    private String revision;
    @Option(names = "--output", paramLabel = "FORM", defaultValue = "text",
            description = "${COMPLETION-CANDIDATES} (default: ${DEFAULT-VALUE}).")
    private Form form;
    @Option(names = "--root", paramLabel = "FOLDER", description = "The project folder of the new script. Default: the nearest folder"
            + " upward with a pom.xml, else the script's own folder.")
    private Path root;

    @Override
    public Integer call() {
        Quiet.libraries();
        if (scripts.size() != (revision == null ? 2 : 1)) {
            throw new ParameterException(spec.commandLine(), revision == null
                    ? "Two scripts are needed, the old and the new; or one and --git REV."
                    : "With --git only the new script is named; the old one is the same file in that revision.");
        }
        ShowPipeline pipeline = new ShowPipeline();
        Scripts newPlace = Scripts.of(scripts.get(scripts.size() - 1), root);
        CheckedPlan before = revision == null ? plan(pipeline, Scripts.of(scripts.get(0), null)) : inRevision(pipeline, newPlace);
        CheckedPlan after = plan(pipeline, newPlace);
        if (!before.plan().script().show().name().equals(after.plan().script().show().name())) {
            throw new UserException(ExitCode.USAGE, "these are two different shows, '" + before.plan().script().show().name()
                    + "' and '" + after.plan().script().show().name() + "'. Compare two states of one show.");
        }
        PlanDiff diff = PlanDiff.between(before, after);
        PrintWriter out = spec.commandLine().getOut();
        try {
            form.format.write(DiffReporter.report(diff, before, after), out);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        out.flush();
        return diff.touchesSafety() ? ExitCode.ERRORS_FOUND : ExitCode.OK;
    }

    private CheckedPlan inRevision(ShowPipeline pipeline, Scripts now) {
        try (GitRevision old = GitRevision.of(now.root(), revision)) {
            Path script = old.folder().resolve(now.root().relativize(now.script()).toString());
            return plan(pipeline, Scripts.of(script, old.folder()));
        }
    }

    private static CheckedPlan plan(ShowPipeline pipeline, Scripts place) {
        CheckedShow show = pipeline.check(place.script(), place.root());
        return show.plan().orElseThrow(() -> new UserException(ExitCode.USAGE, "'" + place.script()
                + "' cannot be planned, so there is nothing to compare. 'girandole check' says what is wrong with it."));
    }

    /** How the difference is told; the names are the words of the command line. */
    enum Form {
        text(DiffFormat.TEXT), markdown(DiffFormat.MARKDOWN), html(DiffFormat.HTML), json(DiffFormat.JSON);

        private final DiffFormat format;

        Form(DiffFormat format) {
            this.format = format;
        }
    }
}
