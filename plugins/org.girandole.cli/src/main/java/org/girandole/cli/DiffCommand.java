package org.girandole.cli;

import java.io.IOException;
import java.io.PrintWriter;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.concurrent.Callable;
import org.girandole.lang.check.GitRevision;
import org.girandole.lang.check.GitRevision.RevisionException;
import org.girandole.lang.check.ShowPipeline;
import org.girandole.plan.CheckedPlan;
import org.girandole.plan.diff.Comparison;
import org.girandole.plan.diff.Comparison.UnrelatedShowsException;
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
                + " differently, which findings and waivers came and went. OLD and NEW are scripts or folders of releases.", ""},
        footer = {"", "Examples:",
                "  girandole diff last-week/my-show.show my-show.show",
                "  girandole diff release my-show.show",
                "  girandole diff --git HEAD~1 my-show.show",
                "  girandole diff --git main --output markdown my-show.show",
                "", "Exit code 0 says that nothing that bears on safety changed, 1 that something did."})
final class DiffCommand implements Callable<Integer> {
    private static final String NOTHING = "there is nothing to compare";

    @Spec
    private CommandSpec spec;
    @Parameters(arity = "1..2", paramLabel = "SCRIPT", description = "The old and the new script or release folder; with --git the new script alone.")
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
        Path now = scripts.get(scripts.size() - 1);
        CheckedPlan before = revision == null ? either(pipeline, "old", scripts.get(0), now, null)
                : inRevision(pipeline, Scripts.of(now, root));
        CheckedPlan after = either(pipeline, "new", now, scripts.get(0), root);
        Comparison compared = compared(before, after);
        PrintWriter out = spec.commandLine().getOut();
        try {
            form.format.write(compared.report(), out);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        out.flush();
        return compared.diff().touchesSafety() ? ExitCode.ERRORS_FOUND : ExitCode.OK;
    }

    private static Comparison compared(CheckedPlan before, CheckedPlan after) {
        try {
            return Comparison.of(before, after);
        } catch (UnrelatedShowsException e) {
            throw new UserException(ExitCode.USAGE, e.getMessage() + ".");
        }
    }

    /** A script, or the folder of a release, which takes its sound from beside the other side. */
    private CheckedPlan either(ShowPipeline pipeline, String which, Path side, Path other, Path project) {
        if (!Files.isDirectory(side)) {
            return WholeShow.plan(pipeline, Scripts.of(side, project), "the " + which + " script '" + side + "'", NOTHING, "Mend it; 'girandole check " + side
                    + "' says all that is wrong with it.");
        }
        Path sound = root != null ? root : Files.isDirectory(other) ? other : Scripts.of(other, null).root();
        Predecessor release = Predecessor.of(pipeline, side, sound);
        release.caution().ifPresent(caution -> spec.commandLine().getErr().println("girandole: " + caution));
        return release.plan();
    }

    private CheckedPlan inRevision(ShowPipeline pipeline, Scripts now) {
        try (GitRevision old = GitRevision.of(now.root(), revision)) {
            String name = now.root().relativize(now.script()).toString();
            Path script = old.folder().resolve(name);
            if (!Files.isRegularFile(script)) {
                throw new UserException(ExitCode.USAGE, "there is no '" + name + "' in revision '" + revision + "'. Name a revision that has it.");
            }
            return WholeShow.plan(pipeline, Scripts.of(script, old.folder()), "the old script, '" + name + "' as it was in revision '" + revision + "',",
                    NOTHING, "Name a revision in which it can be read.");
        } catch (RevisionException e) {
            throw new UserException(ExitCode.USAGE, e.getMessage());
        }
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
